# What an installation holds, and the Debian package made of it: cmake --build … && cpack --config …/CPackConfig.cmake
include(GNUInstallDirs)
set(STEELYARD_APP_ID org.steelyard.Steelyard)

foreach(program steelyard steelyard-console steelyard-paper)
  if(TARGET ${program})
    install(TARGETS ${program} RUNTIME DESTINATION "${CMAKE_INSTALL_BINDIR}")
  else()
    message(NOTICE "Install: there is no target '${program}' yet.")
  endif()
endforeach()
install(FILES packaging/steelyard.desktop DESTINATION "${CMAKE_INSTALL_DATADIR}/applications"
        RENAME ${STEELYARD_APP_ID}.desktop)
install(FILES packaging/metainfo.xml DESTINATION "${CMAKE_INSTALL_DATADIR}/metainfo"
        RENAME ${STEELYARD_APP_ID}.metainfo.xml)
install(FILES resources/icons/steelyard.svg DESTINATION "${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps"
        RENAME ${STEELYARD_APP_ID}.svg)
install(FILES LICENSE resources/licences/THIRD_PARTY.md DESTINATION "${CMAKE_INSTALL_DOCDIR}")

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME steelyard)
set(CPACK_PACKAGE_CONTACT "The Steelyard authors <steelyard@localhost>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "${PROJECT_DESCRIPTION}")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION misc)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# Plugins are found at run time, so the linker's list lacks them.
set(CPACK_DEBIAN_PACKAGE_DEPENDS "libqt6sql6-sqlite, qt6-qpa-plugins, libqt6svg6, fonts-dejavu-core")
set(CPACK_DEBIAN_PACKAGE_RECOMMENDS "gnome-keyring")
include(CPack)
