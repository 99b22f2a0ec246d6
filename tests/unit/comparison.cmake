firn_test(comparison_test
  SOURCES comparison_class_test.cpp comparison_pairing_test.cpp comparison_hostile_test.cpp ../pits.cpp
  DEPENDS support vocabulary pit comparison notation recording)
target_include_directories(comparison_test PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/..")
