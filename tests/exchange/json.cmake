firn_test(exchange_json_test
  SOURCES json_test.cpp json_refused_test.cpp ../pits.cpp
  DEPENDS support vocabulary pit recording notation interpretation bulletin json)
target_include_directories(exchange_json_test PRIVATE "${PROJECT_SOURCE_DIR}/tests" "${PROJECT_SOURCE_DIR}/tests/unit")
