#CAAML in and out.
firn_test(exchange_caaml_demo_test SOURCES caaml_demo_test.cpp DEPENDS caaml recording)
