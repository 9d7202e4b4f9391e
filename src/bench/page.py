"""
How soon the page is usable: part of src/bench/run, by --page.

For a model of 5 MB and for a roof of 20,000 junctions ./seamledger serve MODEL is started as a process of its own, and a headless Chromium,
driven through chromedriver, opens its page with nothing in its cache, and again with all of it. Shown are, in seconds from the first byte
asked for: "rows" when the ledger's rows are in sight, "usable" when a row that was clicked has its detail panel open and the browser is idle again
for a frame, "plan" and "3-D" when each is drawn; "after data" the processor time of the page's main thread from when the result's
outline was there until usable (aimed at: 2 s with 20,000 junctions); then the bytes that came over the wire, the JavaScript heap after a collection, the longest
stretch in which the page did not answer, the processor time of the page's main thread in all, the milliseconds until the frame after a sort, a search, a jump to the end, a picked
row, and "3-D" the main thread's processor time for a frame while the roof is turned (60 frames a second leave 16.7 ms). What a browser
without a graphics card rasters in another process is not in it.

Wants besides what src/bench/run wants: Debian's chromium and chromium-driver.
"""
import json
import os
import shutil
import subprocess
import sys
import tempfile
import threading
import time
import urllib.error
import urllib.request

FLAGS = ['--headless', '--no-sandbox', '--use-gl=angle', '--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--disable-quic',
         '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--window-size=1600,1000',
         '--enable-precise-memory-info']

# Runs before the page's own scripts, and notes when what becomes visible; the first row that shows is clicked at once.
WATCH = r"""
const seen = window.seen = {longest: 0};
new PerformanceObserver(l => l.getEntries().forEach(e => { seen.longest = Math.max(seen.longest, e.duration); })).observe({type: 'longtask', buffered: true});
const note = (name, test) => { if (!(name in seen) && test()) seen[name] = performance.now(); };
const look = () => {
  const row = document.querySelector('.canvas .line:not(.group)');
  note('data', () => performance.getEntriesByType('resource').some(e => e.name.endsWith('/outline') && e.responseEnd > 0));
  note('rows', () => row && row.getBoundingClientRect().height > 0);
  if (row && !seen.clicked) { seen.clicked = true; row.click(); }
  note('usable', () => seen.clicked && document.querySelector('.detail-panel h2 .length') && document.querySelector('.line[aria-selected=true]'));
  note('plan', () => document.querySelector('.sheet .lines path'));
  note('roof', () => Number(document.querySelector('.drawing.roof')?.dataset.drawn) > 0);
  if (!('usable' in seen && 'plan' in seen && 'roof' in seen)) requestAnimationFrame(look);
};
requestAnimationFrame(look);
"""
# Until nothing waits to be done.
IDLE = "const done = arguments[0]; requestIdleCallback(() => requestIdleCallback(() => done(true)))"
# How long after something the second frame from there is: then it has been laid out, painted and shown.
FRAME = """
const done = arguments[0], t = performance.now();
%s
requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now() - t)));
"""
ACTIONS = [
    ('sort', "document.querySelector('[role=columnheader]:nth-child(2) button').click();"),
    ('search', "const s = document.querySelector('.tools input[type=search]'); s.value = 'valley'; s.dispatchEvent(new Event('input'));"
               "const at = performance.now(); while (performance.now() - at < 1); "),
    ('end', "const g = document.querySelector('.rows'); g.focus(); g.dispatchEvent(new KeyboardEvent('keydown', {key: 'End', bubbles: true}));"),
    ('pick', "document.querySelector('.rows').dispatchEvent(new KeyboardEvent('keydown', {key: 'ArrowUp', bubbles: true}));"),
]


class Browser:
    """A headless Chromium with a profile of its own; the W3C's WebDriver protocol over HTTP."""

    def __init__(self, work):
        self.profile = tempfile.mkdtemp(prefix='page-', dir=work)
        self.driver = subprocess.Popen(['chromedriver', '--port=0'], stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
        port = next(line.rsplit(' ', 1)[1].strip('.\n') for line in self.driver.stdout if 'successfully on port' in line)
        self.base = 'http://127.0.0.1:' + port
        options = {'binary': shutil.which('chromium'), 'args': FLAGS + ['--user-data-dir=' + self.profile]}
        session = self.call('POST', '/session', {'capabilities': {'alwaysMatch': {'goog:chromeOptions': options}}})
        self.base += '/session/' + session['sessionId']
        self.call('POST', '/timeouts', {'script': 600000, 'pageLoad': 600000})
        self.cdp('Page.addScriptToEvaluateOnNewDocument', source=WATCH)

    def call(self, method, path, body=None):
        request = urllib.request.Request(self.base + path, method=method, data=None if body is None else json.dumps(body).encode(),
                                         headers={'Content-Type': 'application/json'})
        try:
            with urllib.request.urlopen(request, timeout=600) as answer:
                return json.load(answer)['value']
        except urllib.error.HTTPError as e:
            sys.exit('the browser refused: ' + json.load(e)['value']['message'].splitlines()[0])

    def cdp(self, command, **parameters):
        return self.call('POST', '/goog/cdp/execute', {'cmd': command, 'params': parameters})

    def run(self, script, wait=False):
        return self.call('POST', '/execute/' + ('async' if wait else 'sync'), {'script': script, 'args': []})

    def close(self):
        self.call('DELETE', '')
        self.driver.terminate()
        self.driver.wait()
        shutil.rmtree(self.profile, ignore_errors=True)


def serve(program, model, data, env):
    """Starts the server on a model and waits for its first analysis; answers process, address, seconds until it answers and until done."""
    begun = time.monotonic()
    process = subprocess.Popen([program, 'serve', model, '--port', '0', '--data', data], stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
                               stderr=subprocess.PIPE, text=True, env=dict(os.environ, **env))
    words = next((line for line in process.stderr if ' open http' in line), '')
    if not words:
        sys.exit('the server did not start')
    url = words.split(' open ')[1].split()[0]
    # A full pipe would stop the server at its next line of log.
    threading.Thread(target=process.stderr.read, daemon=True).start()
    answers = time.monotonic() - begun
    begun = time.monotonic()
    analysis = get(url + 'api/start')['analysis']
    while True:
        state = get(url + 'api/analyses/' + analysis)
        if state['state'] not in ('queued', 'running'):
            break
        time.sleep(0.05)
    if state['state'] != 'done':
        sys.exit('the analysis failed: ' + state['problem']['detail'])
    return process, url, answers, time.monotonic() - begun


def get(url):
    with urllib.request.urlopen(url) as answer:
        return json.load(answer)


def opened(browser, url):
    browser.cdp('Performance.enable', timeDomain='threadTicks')
    browser.call('POST', '/url', {'url': url})
    end = time.monotonic() + 300
    at_data = after = 0
    while time.monotonic() < end:
        # In this order: the time that is taken before the data is seen is never too long, nor that after it too short.
        now = processor(browser)
        seen = browser.run('return window.seen')
        if 'data' not in seen:
            at_data = now
        if 'usable' in seen and not after:
            after = processor(browser)
        if all(k in seen for k in ('usable', 'plan', 'roof')):
            break
        time.sleep(0.05)
    else:
        sys.exit('the page never became usable: ' + json.dumps(seen))
    browser.run(IDLE, wait=True)
    moved = browser.run("return [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]"
                        ".reduce((t, e) => t + e.transferSize, 0)")
    longest = browser.run('return window.seen.longest')
    taken = processor(browser)
    browser.cdp('HeapProfiler.collectGarbage')
    heap = browser.run('return performance.memory.usedJSHeapSize')
    return seen, moved, heap, longest, taken, after - at_data


FRAMES = 60
TURN = """
const done = arguments[0], roof = document.querySelector('.drawing.roof'), canvas = roof.querySelector('canvas');
let left = %d;
const begun = Number(roof.dataset.drawn);
const turn = () => {
  if (left-- <= 0) return done(Number(roof.dataset.drawn) - begun);
  canvas.dispatchEvent(new KeyboardEvent('keydown', {key: 'ArrowLeft', bubbles: true}));
  requestAnimationFrame(turn);
};
requestAnimationFrame(turn);
""" % FRAMES


def frame(browser):
    """Milliseconds of the main thread's processor time for a frame of the turning roof."""
    browser.run(IDLE, wait=True)
    begun = processor(browser)
    drawn = browser.run(TURN, wait=True)
    return (processor(browser) - begun) * 1000 / max(1, drawn), drawn


def act(browser, script):
    browser.run(IDLE, wait=True)
    return browser.run(FRAME % script, wait=True)


def processor(browser):
    """Seconds of processor time that the page's main thread has taken so far."""
    return next(m['value'] for m in browser.cdp('Performance.getMetrics')['metrics'] if m['name'] == 'TaskDuration')


def look(work, url):
    """Opens the page twice and works with it."""
    browser = Browser(work)
    try:
        for which in ('first', 'again'):
            seen, moved, heap, longest, taken, after = opened(browser, url)
            print('  %-6s rows %6.2f s  usable %6.2f s  after data %5.2f s  plan %6.2f s  3-D %6.2f s  %9.0f kB moved  %6.0f MiB heap  %6.0f ms longest stretch  %5.2f s processor' % (
                which, seen['rows'] / 1e3, seen['usable'] / 1e3, after, seen['plan'] / 1e3, seen['roof'] / 1e3, moved / 1e3, heap / 2 ** 20, longest, taken))
        print('  then   ' + '  '.join('%s %.0f ms' % (what, act(browser, script)) for what, script in ACTIONS)
              + '  3-D %.1f ms a frame (%d frames)' % frame(browser), flush=True)
    finally:
        browser.close()


def measure(program, name, model, work, env):
    if model.startswith('http'):
        print(model)
        look(work, model)
        return
    data = tempfile.mkdtemp(prefix='data-', dir=work)
    process, url, answers, analysed = serve(program, model, data, env)
    try:
        print('%s: answers after %.2f s, analysed after %.2f s more' % (name, answers, analysed))
        look(work, url)
    finally:
        process.terminate()
        process.wait()
        shutil.rmtree(data, ignore_errors=True)


def run(o, root):
    """Measures the page on both models, or on those that are named, or on results that are served already; says what is missing where it can't."""
    missing = [p for p in ('chromium', 'chromedriver') if not shutil.which(p)]
    if missing:
        sys.exit('the page needs ' + ' and '.join(missing) + ' to be measured')
    if not all(m.startswith('http') for m in o.page) or not o.page:
        # The first start builds the program; it is not measured.
        subprocess.run([o.program, '--version'], check=True, stdout=subprocess.DEVNULL)
    for name, model in [(os.path.basename(m), m) for m in o.page] or made(o, root):
        measure(o.program, name, model, o.work, {'SEAMLEDGER_JAVA_OPTS': '-Xmx3g'})


def made(o, root):
    """Both models with their names, made where they are not there yet."""
    if not os.path.exists(o.replicate):
        sys.exit('no script to replicate models with: give one with --replicate, or models')
    five, many = os.path.join(o.work, 'page-5.ifc'), os.path.join(o.work, 'page-20000.ifc')
    for source, target, size in ((o.base, five, ['--size', '5M']), (os.path.join(root, 'ifc-samples', 'school.ifc'), many, ['--copies', '205'])):
        if not os.path.exists(target):
            subprocess.run([sys.executable, o.replicate, source, target] + size, check=True, stdout=sys.stderr)
    return [('5 MB', five), ('20,000 junctions', many)]
