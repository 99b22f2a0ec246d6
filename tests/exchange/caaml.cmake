#CAAML in and out.
firn_test(exchange_caaml_demo_test SOURCES caaml_demo_test.cpp DEPENDS caaml recording)
    firn_test(exchange_caaml_documents_test SOURCES caaml_documents_test.cpp DEPENDS caaml recording)
        firn_test(exchange_caaml_hostile_test SOURCES caaml_hostile_test.cpp caaml_number_test.cpp DEPENDS
                      caaml recording)
            firn_test(exchange_caaml_random_test SOURCES caaml_random_test.cpp DEPENDS caaml recording)
                target_include_directories(exchange_caaml_random_test PRIVATE "${PROJECT_SOURCE_DIR}/tests")
                    target_include_directories(exchange_caaml_hostile_test PRIVATE
                                               "${PROJECT_SOURCE_DIR}/tests")
