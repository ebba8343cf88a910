// What scale and tape said of a lifter, newest first, with the change since the entry before of the same kind.
//
//   model->setRecord({bodyMass, measurements}, MassUnit::kg);
//   const BodyEntry* entry = model->at(row);
#pragma once

#include "ui/charts/body_spec.h"

#include <QtCore/QAbstractTableModel>

namespace steelyard {

struct BodyEntry {
    QDate date;
    std::optional<BodyPlace> place = {};  // absent: body mass
    QString value;                        // as it is read, with its unit
    QString typed;                        // as it is typed again: "84.5 cm"
    std::optional<double> change = {};    // in kilograms or centimetres; absent: the first of its kind
    friend bool operator==(const BodyEntry&, const BodyEntry&) = default;
};

class BodyModel final : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Day, What, Value, Change, ColumnCount };

    using QAbstractTableModel::QAbstractTableModel;
    void setRecord(const BodyRecord& record, MassUnit unit);
    [[nodiscard]] const BodyEntry* at(int row) const;                           // null: no such row
    [[nodiscard]] int rowOf(QDate date, std::optional<BodyPlace> place) const;  // -1: none

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role = Qt::DisplayRole) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    std::vector<BodyEntry> m_entries;
    MassUnit m_unit = MassUnit::kg;
};

[[nodiscard]] QString bodyWhat(std::optional<BodyPlace> place);  // "body mass", "waist"
// "84,5", "84.5 cm", "33 in"; without a unit it is the one given. Date and place are left to the caller.
[[nodiscard]] std::optional<Measurement> parseTape(const QString& text, TapeUnit unit);

}  // namespace steelyard
