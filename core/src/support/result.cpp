#include "support/result.h"

namespace firn {

Failure failure_of(firn_status status, std::string_view what, std::string_view remedy) {
  Failure failure;
  failure.status = status;
  failure.what = what;
  failure.remedy = remedy;
  return failure;
}

}  // namespace firn
