firn_test(interpretation_test
  SOURCES interpretation_methods_test.cpp interpretation_flags_test.cpp interpretation_concerns_test.cpp
          interpretation_hostile_test.cpp interpretation_table_test.cpp interpretation_schemes_test.cpp
          interpretation_structure_test.cpp interpretation_mechanics_test.cpp ../pits.cpp
  DEPENDS interpretation)
target_include_directories(interpretation_test PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/..")
firn_test(interpretation_said_test
  SOURCES interpretation_said_test.cpp interpretation_limits_test.cpp
          interpretation_rows_test.cpp ../pits.cpp
  DEPENDS interpretation)
target_include_directories(interpretation_said_test PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/..")
