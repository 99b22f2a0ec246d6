firn_test(table_test
  SOURCES table_test.cpp
  DEPENDS table notation recording)
target_include_directories(table_test PRIVATE "${PROJECT_SOURCE_DIR}/tests/unit")

add_executable(table_tool table_tool.cpp)
target_link_libraries(table_tool PRIVATE firn_table firn_notation firn_recording firnbook_warnings)
target_include_directories(table_tool PRIVATE "${PROJECT_SOURCE_DIR}/tests/unit")

find_package(Python3 REQUIRED COMPONENTS Interpreter)
if(NOT CMAKE_CROSSCOMPILING)
  add_test(NAME table_csv COMMAND ${Python3_EXECUTABLE} "${CMAKE_CURRENT_SOURCE_DIR}/table_csv.py"
           $<TARGET_FILE:table_tool> "${CMAKE_CURRENT_BINARY_DIR}/table_csv"
           "${PROJECT_SOURCE_DIR}/examples/first-pit/larch-bowl-entry.txt"
           "${PROJECT_SOURCE_DIR}/examples/first-pit/tarn-shoulder.txt")
endif()
