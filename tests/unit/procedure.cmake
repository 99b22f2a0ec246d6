firn_test(procedure_test
  SOURCES procedure_steps_test.cpp procedure_probing_test.cpp procedure_ticks_test.cpp ../pits.cpp
  DEPENDS support vocabulary pit procedure checking interpretation notation note recording)
target_include_directories(procedure_test PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/..")
