#include "core/care/closed_process.h"

#include <sys/resource.h>
#include <sys/stat.h>

namespace steelyard {

void closeToOthers()
{
    umask(077);  // a book holds other people's health
    const rlimit none{0, 0};
    setrlimit(RLIMIT_CORE, &none);
}

}  // namespace steelyard
