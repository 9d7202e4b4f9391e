"""
Whether a mesher that knows nothing of us finds the same roof area: part of src/bench/run, by --areas [MODEL...].

For each model (by default all of ifc-samples and ../shared/ifc) and each roof element in the result's `coverage`: what looks up by our
account, openings taken away, and by the mesher's triangles (web-ifc); then, in plan, the silhouette of all roof elements' triangles, the
faces of the result, and what of the silhouette lies under no face. Elements that differ by more than 0.5 % and 0.01 m2 follow the model's
line with what the result says of them. The exit status is 1 if there is such an element.
"""
import glob
import json
import os
import subprocess

SHARE = 0.005
LEAST_M2 = 0.01


def models(root):
    return sorted(glob.glob(os.path.join(root, 'ifc-samples', '**', '*.ifc'), recursive=True)) + sorted(
        glob.glob(os.path.join(root, '..', 'shared', 'ifc', '*.ifc')))


def result(root, work, model, results):
    """The path of the model's result, or None where it can't be read."""
    name = os.path.splitext(os.path.basename(model))[0] + '.json'
    if results:
        path = os.path.join(results, name)
    else:
        path = os.path.join(work, name)
        subprocess.run([os.path.join(root, 'seamledger'), 'analyze', model, '--format', 'json', '--output', path],
                       stderr=subprocess.DEVNULL)
    return path if os.path.exists(path) and os.path.getsize(path) else None


def differences(coverage, elements):
    """(GlobalId, ours, the mesher's, entry of the coverage) of each element that differs."""
    for c in coverage:
        ours = c['upwardM2'] - c['voidM2']
        theirs = elements[c['element']] or 0
        if abs(ours - theirs) > max(LEAST_M2, SHARE * max(ours, theirs)):
            yield c['element'], ours, theirs, c


def show(model, path, mesher, seen):
    coverage = json.load(open(path, encoding='utf-8'))['coverage']
    ours = sum(c['upwardM2'] - c['voidM2'] for c in coverage)
    theirs = sum(v or 0 for v in mesher['elements'].values())
    print('%-36s %5d %11.3f %11.3f %9.3f  %11.3f %11.3f %9.3f' % (
        os.path.basename(model)[:36], len(coverage), ours, theirs, ours - theirs, mesher['silhouetteM2'], mesher['facesM2'],
        mesher['bareM2']), flush=True)
    for element, a, b, c in differences(coverage, mesher['elements']):
        seen.append(element)
        reasons = ', '.join('%s %.3f' % (k, c[k]) for k in c if k.endswith('M2') and k != 'upwardM2' and c[k])
        print('    %s ours %.3f mesh %.3f (%s)' % (element, a, b, reasons or 'nothing looks up'), flush=True)


def run(root, work, modules, only, results):
    print('%-36s %5s %11s %11s %9s  %11s %11s %9s' % ('model', 'roofs', 'ours m2', 'mesh m2', 'more', 'silhouette', 'faces', 'bare'))
    seen = []
    for model in only or models(root):
        path = result(root, work, model, results)
        if path is None:
            print('%-36s can\'t be read by us' % os.path.basename(model)[:36])
            continue
        done = subprocess.run(['node', os.path.join(root, 'src', 'bench', 'areas.cjs'), model, path], capture_output=True, text=True,
                              env=dict(os.environ, NODE_PATH=modules))
        if done.returncode:
            print('%-36s the mesher fails: %s' % (os.path.basename(model)[:36], done.stderr.strip()[:90]))
            continue
        show(model, path, json.loads(done.stdout.splitlines()[-1]), seen)
    return 1 if seen else 0
