# Two small libraries whose sources are built into ours, with the same flags for every processor: an XML
# parser and a QR code encoder. Neither shows in a public header, and neither is installed.
# cmake/setup.sh puts their sources where they are looked for; elsewhere give the folders.
set(FIRNBOOK_PUGIXML_SOURCE /usr/src/firnbook/pugixml/src CACHE PATH "Folder that holds pugixml.cpp")
set(FIRNBOOK_QRCODEGEN_SOURCE /usr/src/firnbook/qr-code-generator/c CACHE PATH "Folder that holds qrcodegen.c")

foreach(source FIRNBOOK_PUGIXML_SOURCE/pugixml.cpp FIRNBOOK_QRCODEGEN_SOURCE/qrcodegen.c)
  cmake_path(GET source PARENT_PATH folder)
  cmake_path(GET source FILENAME file)
  if(NOT EXISTS "${${folder}}/${file}")
    message(FATAL_ERROR "${file} was not found in ${${folder}}. Run `sh cmake/setup.sh build`, or unpack its "
                        "sources (Debian: pugixml, qr-code-generator) and give the folder as ${folder}")
  endif()
endforeach()

# Only the tree: no XPath (it computes with the locale's numbers), no streams, no exceptions.
add_library(firnbook_pugixml STATIC "${FIRNBOOK_PUGIXML_SOURCE}/pugixml.cpp")
target_include_directories(firnbook_pugixml SYSTEM PUBLIC "${FIRNBOOK_PUGIXML_SOURCE}")
target_compile_definitions(firnbook_pugixml PUBLIC PUGIXML_NO_XPATH PUGIXML_NO_STL PUGIXML_NO_EXCEPTIONS
                           PRIVATE NDEBUG)
target_compile_options(firnbook_pugixml PRIVATE ${FIRNBOOK_OPTIMISE_HOT})

add_library(firnbook_qrcodegen STATIC "${FIRNBOOK_QRCODEGEN_SOURCE}/qrcodegen.c")
target_include_directories(firnbook_qrcodegen SYSTEM PUBLIC "${FIRNBOOK_QRCODEGEN_SOURCE}")
target_compile_definitions(firnbook_qrcodegen PRIVATE NDEBUG)
target_compile_options(firnbook_qrcodegen PRIVATE ${FIRNBOOK_OPTIMISE_COLD})

foreach(library firnbook_pugixml firnbook_qrcodegen)
  target_link_libraries(${library} PRIVATE firnbook_flags)
endforeach()
