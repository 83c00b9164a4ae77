@echo off
rem Runs Maven on a JDK 21 or newer: JAVA_HOME first, then the PATH, then where Windows installers put JDKs.
setlocal EnableDelayedExpansion
set NEEDED=21
set FOUND=

if defined JAVA_HOME call :try "%JAVA_HOME%"
if not defined FOUND for /f "delims=" %%j in ('where javac 2^>nul') do if not defined FOUND call :try "%%~dpj.."
for %%r in ("%ProgramFiles%\Java" "%ProgramFiles%\Eclipse Adoptium" "%ProgramFiles%\Microsoft" "%ProgramFiles%\Zulu" "%ProgramFiles%\Amazon Corretto" "%USERPROFILE%\.jdks") do (
  if not defined FOUND if exist %%r for /d %%d in ("%%~r\*") do if not defined FOUND call :try "%%d"
)

if not defined FOUND (
  echo Puzzle Workshop needs a JDK %NEEDED% or newer, and there is none in JAVA_HOME, on the PATH or in the usual places. 1>&2
  echo Install one ^(https://adoptium.net^) and run mvnw again, or set JAVA_HOME to where it lies. 1>&2
  exit /b 1
)
where mvn >nul 2>nul
if errorlevel 1 (
  echo Puzzle Workshop is built with Maven, and there is no mvn on the PATH. 1>&2
  echo Install it ^(https://maven.apache.org/download.cgi^) and run mvnw again. 1>&2
  exit /b 1
)
set "JAVA_HOME=%FOUND%"
set "PATH=%FOUND%\bin;%PATH%"
cd /d "%~dp0"
call mvn %*
exit /b %errorlevel%

:try
if not exist "%~1\bin\javac.exe" exit /b 0
for /f "tokens=2 delims== " %%v in ('type "%~1\release" 2^>nul ^| findstr /b "JAVA_VERSION="') do (
  for /f "delims=." %%m in ("%%~v") do if %%m GEQ %NEEDED% set "FOUND=%~f1"
)
exit /b 0
