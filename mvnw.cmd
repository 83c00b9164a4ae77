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
cd /d "%~dp0"
set MAVEN=mvn
where mvn >nul 2>nul
if errorlevel 1 (
  for /f "tokens=1,2 delims==" %%a in ('findstr /v /b "#" .mvn\wrapper\maven-wrapper.properties') do set "%%a=%%b"
  set "HOME_OF_MAVEN=%USERPROFILE%\.m2\wrapper\puzzle-workshop\apache-maven-!mavenVersion!"
  if not exist "!HOME_OF_MAVEN!\bin\mvn.cmd" call :fetch
  if not exist "!HOME_OF_MAVEN!\bin\mvn.cmd" (
    echo Maven is not installed and could not be fetched. Install it ^(https://maven.apache.org/download.cgi^) and run mvnw again. 1>&2
    exit /b 1
  )
  set "MAVEN=!HOME_OF_MAVEN!\bin\mvn.cmd"
)
set "JAVA_HOME=%FOUND%"
set "PATH=%FOUND%\bin;%PATH%"
call "%MAVEN%" %*
exit /b %errorlevel%

:try
if not exist "%~1\bin\javac.exe" exit /b 0
for /f "tokens=2 delims== " %%v in ('type "%~1\release" 2^>nul ^| findstr /b "JAVA_VERSION="') do (
  for /f "delims=." %%m in ("%%~v") do if %%m GEQ %NEEDED% set "FOUND=%~f1"
)
exit /b 0

:fetch
set "SOURCE=%distributionUrl:.tar.gz=.zip%"
if defined MVNW_REPOURL set "SOURCE=%MVNW_REPOURL%/%repositoryPath:.tar.gz=.zip%"
set "WORK=%TEMP%\puzzle-workshop-maven-%RANDOM%"
powershell -NoProfile -ExecutionPolicy Bypass -Command "$ErrorActionPreference='Stop'; $ProgressPreference='SilentlyContinue'; New-Item -ItemType Directory -Force '%WORK%' | Out-Null; Invoke-WebRequest -UseBasicParsing '%SOURCE%' -OutFile '%WORK%\maven.zip'; if ((Get-FileHash -Algorithm SHA512 '%WORK%\maven.zip').Hash -ne '%zipSha512Sum%') { throw 'What was fetched is not the Maven that is pinned: its checksum is another.' }; Expand-Archive '%WORK%\maven.zip' '%WORK%'; New-Item -ItemType Directory -Force (Split-Path '%HOME_OF_MAVEN%') | Out-Null; Move-Item '%WORK%\apache-maven-%mavenVersion%' '%HOME_OF_MAVEN%'"
rd /s /q "%WORK%" 2>nul
exit /b 0
