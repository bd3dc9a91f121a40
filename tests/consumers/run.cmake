# SPDX-License-Identifier: MIT
# Runs one consumer project: cmake -D consumer=... -P run.cmake, see CMakeLists.txt beside it.
cmake_minimum_required(VERSION 3.25)

file(REMOVE_RECURSE ${work})
file(MAKE_DIRECTORY ${work})

function(run)
  execute_process(COMMAND ${ARGV} RESULT_VARIABLE result)
  if(NOT result EQUAL 0)
    list(JOIN ARGV " " command)
    message(FATAL_ERROR "failed: ${command}")
  endif()
endfunction()

# Installs into one place and moves the tree to another, so that no absolute path may hide in what is installed.
macro(install_and_move)
  run(${CMAKE_COMMAND} --install ${layshaft_build} --prefix ${work}/before --component Development)
  file(RENAME ${work}/before ${work}/after)
endmacro()

macro(configure_build_and_run)
  run(${CMAKE_COMMAND} -S ${CMAKE_CURRENT_LIST_DIR}/${consumer} -B ${work}/build -G ${generator}
    -D CMAKE_CXX_COMPILER=${compiler} ${ARGN})
  run(${CMAKE_COMMAND} --build ${work}/build)
  run(${work}/build/consumer)
endmacro()

if(consumer STREQUAL "find_package")
  install_and_move()
  configure_build_and_run(-D CMAKE_PREFIX_PATH=${work}/after -D LAYSHAFT_BOOST_INCLUDE_DIR=${boost} -D JSON=${json})
elseif(consumer STREQUAL "prefix_alone")
  # Told of one prefix and nothing else, which Boost's headers share as they do under /usr/local. That the headers
  # compile from there is shown by find_package, so that finding them is enough here.
  install_and_move()
  file(GLOB_RECURSE installed ${work}/after/*.cmake)
  foreach(file IN LISTS installed)
    file(READ ${file} text)
    foreach(place IN ITEMS ${layshaft_source} ${layshaft_build} ${work})
      string(FIND "${text}" "${place}" found)
      if(NOT found EQUAL -1)
        message(FATAL_ERROR "${file} names ${place}, which another machine does not have")
      endif()
    endforeach()
  endforeach()
  file(CREATE_LINK ${boost}/boost ${work}/after/include/boost SYMBOLIC)
  run(${CMAKE_COMMAND} -S ${CMAKE_CURRENT_LIST_DIR}/find_package -B ${work}/build -G ${generator}
    -D CMAKE_CXX_COMPILER=${compiler} -D CMAKE_PREFIX_PATH=${work}/after -D CMAKE_EXPORT_COMPILE_COMMANDS=ON
    -D CMAKE_DISABLE_FIND_PACKAGE_Boost=ON -D CMAKE_FIND_USE_CMAKE_SYSTEM_PATH=OFF)
  file(READ ${work}/build/compile_commands.json commands)
  if(NOT commands MATCHES "-(isystem|I) ?${work}/after/include ")
    message(FATAL_ERROR "the consumer is not compiled with the headers of the prefix: ${commands}")
  endif()
elseif(consumer STREQUAL "add_subdirectory")
  configure_build_and_run(-D LAYSHAFT_SOURCE=${layshaft_source} -D LAYSHAFT_BOOST_INCLUDE_DIR=${boost} -D JSON=${json})
elseif(consumer STREQUAL "pkg_config")
  install_and_move()
  find_program(pkg_config pkg-config REQUIRED)
  set(ENV{PKG_CONFIG_PATH} ${work}/after/share/pkgconfig)
  unset(ENV{CPATH})
  unset(ENV{CPLUS_INCLUDE_PATH})
  execute_process(COMMAND ${pkg_config} --cflags layshaft OUTPUT_VARIABLE flags
    OUTPUT_STRIP_TRAILING_WHITESPACE COMMAND_ERROR_IS_FATAL ANY)
  separate_arguments(flags)
  run(${compiler} -std=c++20 ${flags} ${CMAKE_CURRENT_LIST_DIR}/consumer.cpp -o ${work}/consumer)
  run(${work}/consumer)
elseif(consumer STREQUAL "missing_boost")
  # Boost newer than any there is stands for none at all, wherever this machine may have one.
  install_and_move()
  file(READ ${work}/after/share/cmake/layshaft/layshaft-config.cmake config)
  string(REGEX REPLACE "set\\(LAYSHAFT_BOOST_MINIMUM [0-9.]+\\)" "set(LAYSHAFT_BOOST_MINIMUM 9.99)" config "${config}")
  string(REPLACE "\${LAYSHAFT_BOOST_MINIMUM}" "9.99" config "${config}")
  file(WRITE ${work}/after/share/cmake/layshaft/layshaft-config.cmake "${config}")
  execute_process(COMMAND ${CMAKE_COMMAND} -S ${CMAKE_CURRENT_LIST_DIR}/find_package -B ${work}/build -G ${generator}
    -D CMAKE_CXX_COMPILER=${compiler} -D CMAKE_PREFIX_PATH=${work}/after -D LAYSHAFT_BOOST_INCLUDE_DIR=${boost}
    RESULT_VARIABLE result ERROR_VARIABLE said OUTPUT_QUIET)
  string(REGEX REPLACE "[ \n]+" " " said "${said}")
  if(result EQUAL 0 OR NOT said MATCHES "layshaft needs the headers of Boost 9.99 or newer: install them")
    message(FATAL_ERROR "without Boost the consumer was told: ${said}")
  endif()
else()
  message(FATAL_ERROR "no consumer is called \"${consumer}\"")
endif()
