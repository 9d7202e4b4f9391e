@echo off
rem Starts seamledger on Windows, and builds it first where there is no build or sources are newer than it.
rem SEAMLEDGER_JAVA_OPTS: more options for the Java machine, such as -Xmx2g.
rem What a change adds here belongs in the file seamledger beside it, too: that one says why each option is there.
setlocal EnableExtensions DisableDelayedExpansion
set "root=%~dp0"
set "root=%root:~0,-1%"
set "jar=%root%\target\seamledger.jar"
set "classes=%root%\target\seamledger.jsa"
set "began=%root%\target\build-began"
set "java=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
"%java%" -version >nul 2>&1
if errorlevel 1 set "why=no Java was found; a JDK 17 or later is needed" & goto fail

set "why="
set "tries=0"
call :find_work
if not defined work goto start
if not exist "%root%\target" mkdir "%root%\target"

rem Two first starts at once: one builds, the other waits for it. The open file is the lock; it is free again when its process ends.
:lock
set "got="
8>&2 2>nul (
  9>"%root%\target\lock" (
    set "got=yes"
    call :prepare 2>&8
  )
)
if defined why goto fail
if defined got goto start
set /a tries+=1
if %tries% geq 900 set "why=%root%\target\lock can't be opened, or another start has been building for a quarter of an hour" & goto fail
ping -n 2 127.0.0.1 >nul
goto lock

:start
set "megabytes=0"
set "compiler=-XX:TieredStopAtLevel=1"
call :weigh %*
set "late=-XX:Tier4InvocationThreshold=500000 -XX:Tier4MinInvocationThreshold=60000 -XX:Tier4CompileThreshold=1500000 -XX:Tier4BackEdgeThreshold=4000000"
set "lean=-XX:+IgnoreUnrecognizedVMOptions -XX:+UnlockDiagnosticVMOptions -XX:-C1ProfileCalls -XX:-C1ProfileVirtualCalls -XX:-C1ProfileInlinedCalls -XX:-C1ProfileBranches -XX:-C1ProfileCheckcasts"
if %megabytes% geq 100 set "compiler=%late% %lean%"
if "%~1"=="serve" set "compiler=%late%"
if "%~1"=="watch" set "compiler="
if "%~1"=="portfolio" set "compiler="
"%java%" -XX:+UseSerialGC "-XX:SharedArchiveFile=%classes%" -Xshare:auto -Xlog:disable -Xlog:all=error:stderr %compiler% "-Dseamledger.shapes=%root%\shapes" "-Dseamledger.samples=%root%\ifc-samples" %SEAMLEDGER_JAVA_OPTS% -jar "%jar%" %*
exit /b %errorlevel%

:fail
>&2 echo seamledger: %why%
exit /b 70

rem Says in the variable work what there is to do: build, archive, or nothing.
:find_work
set "work="
if not exist "%jar%" set "work=build" & exit /b 0
if not exist "%root%\pom.xml" goto archive_missing
if not exist "%root%\src\main" goto archive_missing
powershell -NoProfile -NonInteractive -Command "$t = (Get-Item -LiteralPath $env:jar).LastWriteTimeUtc; Set-Location -LiteralPath $env:root; if (@('pom.xml', 'src/main', 'web' | Get-Item) + @(Get-ChildItem -Recurse 'src/main', 'web') | Where-Object { $_.LastWriteTimeUtc -gt $t } | Select-Object -First 1) { exit 3 }" <nul >nul 2>&1
if %errorlevel%==3 set "work=build" & exit /b 0
:archive_missing
if exist "%root%\ifc-samples\school.ifc" if not exist "%classes%" set "work=archive"
exit /b 0

rem Runs with the lock held, and looks again: another start may have done it meanwhile.
:prepare
call :find_work
if "%work%"=="build" call :build
if defined why exit /b 1
if defined work if exist "%root%\ifc-samples\school.ifc" call :store_class_data
exit /b 0

rem The jar takes the time at which the build began: a source that is edited meanwhile counts as newer.
:build
if not exist "%root%\src\main" set "why=there is neither a build in %root%\target nor the sources to make one" & exit /b 1
if not exist "%root%\pom.xml" set "why=there is neither a build in %root%\target nor the sources to make one" & exit /b 1
where mvn >nul 2>&1
if errorlevel 1 set "why=building needs Maven (mvn) and a JDK 17 or later; mvn was not found" & exit /b 1
>&2 echo seamledger: building, which takes a minute the first time ...
type nul >"%began%"
pushd "%root%"
call mvn -q -B -Dstyle.color=never -Dmaven.test.skip=true package <nul 1>&2
if errorlevel 1 set "why=the build failed; what Maven said stands above"
popd
if defined why exit /b 1
powershell -NoProfile -NonInteractive -Command "(Get-Item -LiteralPath $env:jar).LastWriteTimeUtc = (Get-Item -LiteralPath $env:began).LastWriteTimeUtc" <nul >nul 2>&1
exit /b 0

rem An archive of the classes that an analysis loads makes every later start twice as quick. Without it all works, only slower.
:store_class_data
"%java%" -XX:+UseSerialGC -XX:TieredStopAtLevel=1 "-XX:ArchiveClassesAtExit=%classes%.new" -Xlog:disable -jar "%jar%" warm-up "%root%\ifc-samples\school.ifc" "%root%\ifc-samples\granary.ifc" "%root%\ifc-samples\stable.ifc" <nul >nul 2>&1
if not exist "%classes%.new" type nul >"%classes%.new"
move /y "%classes%.new" "%classes%" >nul
exit /b 0

rem Adds up the models among the words, in megabytes; packed ones count six times.
:weigh
if "%~1"=="" exit /b 0
if not exist "%~1" shift & goto weigh
set "size=%~z1"
if not defined size shift & goto weigh
set "factor=1"
if /i "%~x1"==".gz" set "factor=6"
if /i "%~x1"==".zip" set "factor=6"
if /i "%~x1"==".ifczip" set "factor=6"
set "size=0%size:~0,-6%"
if "%size%"=="0" shift & goto weigh
set "size=%size:~1%"
set /a megabytes+=size*factor
shift
goto weigh
