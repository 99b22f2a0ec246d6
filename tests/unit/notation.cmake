firn_test(notation_test_line_test
  SOURCES notation_test_line_scanner_test.cpp notation_test_line_read_test.cpp
          notation_test_line_refused_test.cpp notation_test_line_print_test.cpp
          notation_test_line_random_test.cpp
  DEPENDS notation)
