# Flags that every target of the project shares; a target takes them by linking project_flags.
add_library(project_flags INTERFACE)
target_include_directories(project_flags INTERFACE "${PROJECT_SOURCE_DIR}")
target_compile_definitions(project_flags INTERFACE
  QT_NO_CAST_FROM_ASCII QT_NO_CAST_TO_ASCII QT_NO_URL_CAST_FROM_STRING QT_NO_KEYWORDS
  QT_DISABLE_DEPRECATED_BEFORE=0x060400 STEELYARD_VERSION="${PROJECT_VERSION}")
target_compile_options(project_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wno-sign-conversion -Wnon-virtual-dtor -Woverloaded-virtual
  -Wcast-qual -Wformat=2 -Wimplicit-fallthrough -ffp-contract=off
  -Wno-missing-field-initializers)  # members have defaults; naming the ones that matter is the point
if(STEELYARD_WARNINGS_AS_ERRORS)
  target_compile_options(project_flags INTERFACE -Werror)
endif()
if(STEELYARD_SANITIZE)
  target_compile_options(project_flags INTERFACE "-fsanitize=${STEELYARD_SANITIZE}" -fno-omit-frame-pointer)
  target_link_options(project_flags INTERFACE "-fsanitize=${STEELYARD_SANITIZE}")
endif()
if(STEELYARD_COVERAGE)
  target_compile_options(project_flags INTERFACE --coverage)
  target_link_options(project_flags INTERFACE --coverage)
endif()

find_program(STEELYARD_CCACHE ccache)
if(STEELYARD_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${CMAKE_COMMAND} -E env
      CCACHE_SLOPPINESS=pch_defines,time_macros,include_file_mtime,include_file_ctime "${STEELYARD_CCACHE}")
endif()
find_program(STEELYARD_MOLD mold)
if(STEELYARD_MOLD AND CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  add_link_options(-fuse-ld=mold)
endif()
