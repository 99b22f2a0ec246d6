firn_test(exchange_json_test
  SOURCES json_test.cpp json_refused_test.cpp ../pits.cpp
  DEPENDS support vocabulary pit recording notation interpretation bulletin json)
target_include_directories(exchange_json_test PRIVATE "${PROJECT_SOURCE_DIR}/tests" "${PROJECT_SOURCE_DIR}/tests/unit")

add_executable(json_samples json_samples.cpp ../pits.cpp)
target_link_libraries(json_samples PRIVATE firn_json firn_notation firn_recording firn_bulletin firnbook_warnings)
target_include_directories(json_samples PRIVATE "${PROJECT_SOURCE_DIR}/tests" "${PROJECT_SOURCE_DIR}/tests/unit")
target_compile_definitions(json_samples PRIVATE FIRN_SOURCE_DIR="${PROJECT_SOURCE_DIR}")
if(FIRNBOOK_PYTHON AND NOT CMAKE_CROSSCOMPILING)
  add_test(NAME exchange.json_validates
    COMMAND "${FIRNBOOK_PYTHON}" "${CMAKE_CURRENT_SOURCE_DIR}/json_validates.py" "${PROJECT_SOURCE_DIR}/schemas/json"
            $<TARGET_FILE:json_samples> "${CMAKE_CURRENT_BINARY_DIR}/json-samples" 200)
  set_tests_properties(exchange.json_validates PROPERTIES SKIP_RETURN_CODE 77)
endif()
