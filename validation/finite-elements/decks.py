"""Writes every deck. Run: python3 decks.py FOLDER"""
import pathlib
import sys

import plates
import rubber
import towers

folder = pathlib.Path(sys.argv[1])
for name, deck in {**rubber.DECKS, **plates.DECKS, **towers.DECKS}.items():
    (folder / f'{name}.inp').write_text(f'** {name}\n{deck}')
    print(name)
