firn_test(pit_test
  SOURCES pit_view_test.cpp pit_verify_test.cpp ../pits.cpp
  DEPENDS support pit checking)
