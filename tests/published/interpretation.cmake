firn_test(interpretation_published_test
  SOURCES interpretation_test.cpp methods_table_test.cpp ../pits.cpp
  DEPENDS interpretation notation)
target_include_directories(interpretation_published_test PRIVATE
  "${CMAKE_CURRENT_SOURCE_DIR}/.." "${CMAKE_CURRENT_SOURCE_DIR}/../unit")
