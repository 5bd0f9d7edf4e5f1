"""Writes one check file. The format is that of validation/check-file.ts."""
import json
import pathlib

CHECKS = pathlib.Path(__file__).resolve().parent.parent / 'checks'


def plain(value):
    """numpy values to plain Python; -0.0 to 0.0."""
    if hasattr(value, 'tolist'):
        value = value.tolist()
    if isinstance(value, dict):
        return {key: plain(entry) for key, entry in value.items()}
    if isinstance(value, (list, tuple)):
        return [plain(entry) for entry in value]
    if isinstance(value, float) and value == 0:
        return 0
    return value


def write(topic, id, title, evaluator, quantity, unit, inputs, expected, tolerance, source, provenance, maker=None):
    kind, value, reason = tolerance
    work, edition, place, *note = source
    check = {
        'id': id,
        'topic': topic,
        'title': title,
        'evaluator': evaluator,
        'quantity': quantity,
        'unit': unit,
        'inputs': plain(inputs),
        'expected': plain(expected),
        'tolerance': {'kind': kind, 'value': value, 'reason': reason},
        'source': {'work': work, 'edition': edition, 'place': place, **({'note': note[0]} if note else {})},
        'provenance': provenance,
        **({'maker': maker} if maker else {}),
    }
    folder = CHECKS / topic
    folder.mkdir(parents=True, exist_ok=True)
    (folder / f'{id}.json').write_text(json.dumps(check, indent=2, ensure_ascii=False) + '\n')
