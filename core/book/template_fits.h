// One template for many lifters, from the book: each lifter's block with loads from their own record, and what differs from the
// template, before anything is written.
//
//   STEELYARD_TRY(const auto fits, readTemplateFits({path, shape, {ada, florian}, tr("Spring"), monday, today}, progress));
//   fits[0].fit.differences[0].sentence;   fits[0].loads == 18;   fits[0].slots == 20
//   history.perform(addBlocks(blocksOf(fits), shape.name));          // one step
//
// The work of a background job, through a connection of its own; one lifter after the other, in the order asked for.
// Failures: Invalid (no name, no start), NotFound, Storage, Cancelled.
#pragma once

#include "core/base/progress.h"
#include "core/planning/template_fit.h"

namespace steelyard {

struct TemplateFitsRequest {
    QString bookPath;
    BlockTemplate shape;
    std::vector<Id<Athlete>> athletes;
    QString name;
    QDate start;
    QDate today;
    Wording wording = {};
};

struct LifterFit {
    Id<Athlete> athlete;
    QString name;
    TemplateFit fit;
    int slots = 0;
    int loads = 0;  // slots that have one; the others are built up to
};

[[nodiscard]] Result<std::vector<LifterFit>> readTemplateFits(const TemplateFitsRequest&, const Progress&);
[[nodiscard]] std::vector<Block> blocksOf(const std::vector<LifterFit>&);

}  // namespace steelyard
