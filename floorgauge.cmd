@echo off
rem Floorgauge's command line for Windows. Builds on first use and whenever a source is newer than what was built, then runs.
setlocal EnableExtensions DisableDelayedExpansion
set "ROOT=%~dp0"
if "%ROOT:~-1%"=="\" set "ROOT=%ROOT:~0,-1%"
set "BUILT=%ROOT%\app\target\built"

rem A JAVA_HOME that is too old, or holds no Java, makes way for the Java on the path.
set "JAVA="
if defined JAVA_HOME call :try "%JAVA_HOME%\bin\java.exe"
if not defined JAVA call :try java
if not defined JAVA goto nojava

rem PowerShell compares file times; exit code 1 says that something is newer than the last build.
if not exist "%BUILT%" (
    echo floorgauge: building for the first time, which fetches libraries and takes some minutes 1>&2
    goto build
)
powershell -NoProfile -Command "$built = (Get-Item -LiteralPath $env:BUILT).LastWriteTimeUtc; $poms = Get-ChildItem -LiteralPath $env:ROOT -Filter pom.xml -Recurse -Depth 1; $sources = 'court','vision','events','eval','sample-clips','app' | ForEach-Object { $env:ROOT + '\' + $_ + '\src\main' } | Where-Object { Test-Path -LiteralPath $_ } | ForEach-Object { Get-ChildItem -LiteralPath $_ -File -Recurse }; if (@($poms) + @($sources) | Where-Object { $_.LastWriteTimeUtc -gt $built }) { exit 1 } else { exit 0 }"
if not errorlevel 1 goto run
echo floorgauge: sources changed, building again 1>&2

:build
where mvn >nul 2>nul
if errorlevel 1 (
    echo floorgauge: Maven was not found: install Maven 3.8 or newer so that "mvn" can be called 1>&2
    exit /b 2
)
if not exist "%ROOT%\app\target" mkdir "%ROOT%\app\target" 2>nul
if not exist "%ROOT%\app\target" (
    echo floorgauge: cannot write to "%ROOT%": build it where you may write 1>&2
    exit /b 2
)
rem Taken before the build, so that a source saved meanwhile is built next time.
type nul > "%BUILT%.started"
set "LOG=%ROOT%\app\target\build.log"
pushd "%ROOT%"
call mvn -B -q -Dstyle.color=never -DskipTests -Dspotless.check.skip=true package >"%LOG%" 2>&1
if errorlevel 1 (
    popd
    type "%LOG%" 1>&2
    echo floorgauge: the build failed; the lines above say where 1>&2
    exit /b 1
)
popd
move /y "%BUILT%.started" "%BUILT%" >nul

:run
if not defined FLOORGAUGE_HEAP set "FLOORGAUGE_HEAP=2g"
if not defined FLOORGAUGE_MODELS set "FLOORGAUGE_MODELS=%ROOT%\models"
"%JAVA%" "-Xmx%FLOORGAUGE_HEAP%" -Dfile.encoding=UTF-8 -Djava.awt.headless=true -Dai.djl.offline=true -DOPT_OUT_TRACKING=true "-Dfloorgauge.models=%FLOORGAUGE_MODELS%" -cp "%ROOT%\app\target\classes;%ROOT%\app\target\lib\*" floorgauge.app.Main %*
exit /b %ERRORLEVEL%

:nojava
echo floorgauge: no Java 17 or newer was found: install a JDK 17 (not only a runtime), or set JAVA_HOME to one 1>&2
exit /b 2

rem Takes a Java as %JAVA% where its version is 17 or newer.
:try
set "JAVA_MAJOR="
rem What Java says goes through a file: a path with spaces inside a piped command of "for" cannot be quoted safely.
set "JAVA_SAYS=%TEMP%\floorgauge-java-%RANDOM%.txt"
"%~1" -version >nul 2>"%JAVA_SAYS%"
for /f "usebackq tokens=2,3" %%v in ("%JAVA_SAYS%") do (
    if /i "%%v"=="version" for /f "tokens=1 delims=.-" %%m in ("%%~w") do set "JAVA_MAJOR=%%m"
)
del "%JAVA_SAYS%" 2>nul
if not defined JAVA_MAJOR exit /b 0
if %JAVA_MAJOR% GEQ 17 set "JAVA=%~1"
exit /b 0
