firn_test(allocations_test SOURCES allocations_test.cpp DEPENDS pit checking interpretation)
