firn_test(checking_test
  SOURCES checking_rules_test.cpp checking_cases.cpp checking_said.cpp checking_limits_test.cpp checking_tables_test.cpp checking_edges_test.cpp checking_demo_test.cpp checking_catalogue_test.cpp
          ../pits.cpp
  DEPENDS support pit checking)
