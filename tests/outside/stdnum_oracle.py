# What python3-stdnum makes of GS1 texts, line by line: "E" and hex for an element string with byte 29 between
# elements, "N" and digits for an item number. Answers "ok ai=value|ai=value", "ok", or "no".
import datetime
import sys

from stdnum import ean, gs1_128
from stdnum.exceptions import ValidationError


def worded(value):
    if isinstance(value, tuple):
        return '..'.join(worded(part) for part in value)
    if isinstance(value, datetime.datetime):
        return value.date().isoformat()
    if isinstance(value, datetime.date):
        return value.isoformat()
    return str(value)


for line in sys.stdin:
    kind, text = line[0], line[1:].strip()
    try:
        if kind == 'N':
            print('ok' if ean.is_valid(text) else 'no')
            continue
        found = gs1_128.info(bytes.fromhex(text).decode('latin-1'), '\x1d')
        print('ok ' + '|'.join(sorted(ai + '=' + worded(value) for ai, value in found.items())).replace('\n', '?'))
    except (ValidationError, ValueError, TypeError, IndexError, ArithmeticError):
        print('no')
