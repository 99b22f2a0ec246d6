firn_test(bulletin_test
  SOURCES bulletin_reader_test.cpp bulletin_rules_test.cpp bulletin_words_test.cpp ../pits.cpp
  DEPENDS support pit interpretation bulletin note)
target_include_directories(bulletin_test PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/..")
target_compile_definitions(bulletin_test PRIVATE FIRN_BULLETINS="${PROJECT_SOURCE_DIR}/tests/bulletins")

# The invented bulletins are bulletins by the standard's own schema, which lies beside the repository.
if(FIRNBOOK_PYTHON AND NOT CMAKE_CROSSCOMPILING)
  add_test(NAME bulletins_by_the_standard
    COMMAND "${FIRNBOOK_PYTHON}" "${PROJECT_SOURCE_DIR}/tests/bulletins/by_the_standard.py")
  set_tests_properties(bulletins_by_the_standard PROPERTIES SKIP_RETURN_CODE 77)
endif()
