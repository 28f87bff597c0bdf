"""Writes the workbooks that tests/intake/workbook.test.ts reads. Run by hand: python3 make_workbooks.py

The .xlsx files are written by openpyxl 3.1; the .ods file is put together here by ISO/IEC 26300 (OpenDocument 1.3), as
is what openpyxl does not write (a stored formula value). Everybody in them is invented.
"""
import datetime as dt
import os
import zipfile

import openpyxl

here = os.path.dirname(os.path.abspath(__file__))


def roster():
    book = openpyxl.Workbook()
    cover = book.active
    cover.title = "Cover"
    cover["A1"] = "Spring screening"
    sheet = book.create_sheet("Roster")
    sheet.append(["Athlete", "Measured on", "Femur (cm)", "Symmetry", "Barefoot", "Warm-up", "Note"])
    sheet.append(["Mira Dahl", dt.date(2026, 3, 4), 43.1, 0.96, True, dt.timedelta(minutes=12, seconds=30), "line one\nline two"])
    sheet.append(["Jörg \"Jo\" Weil", dt.date(2026, 3, 5), 44.65, 0.885, False, dt.timedelta(minutes=9), None])
    sheet.append(["Ola Åkesson", dt.date(2025, 12, 31), "about 45", 0.91, True, None, "=not a formula"])
    sheet["G4"].data_type = "s"
    for row in (2, 3, 4):
        sheet.cell(row, 4).number_format = "0.0%"
        sheet.cell(row, 6).number_format = "[h]:mm:ss"
    hidden = book.create_sheet("Lists")
    hidden.sheet_state = "hidden"
    hidden.append(["a", "b"])
    hidden.append([1, 2])
    other = book.create_sheet("Log")
    other.append(["date", "load (kg)"])
    other.append([dt.datetime(2026, 3, 4, 18, 30), 80])
    book.save(os.path.join(here, "roster.xlsx"))


def days_from_1904():
    book = openpyxl.Workbook()
    book.epoch = openpyxl.utils.datetime.CALENDAR_MAC_1904
    sheet = book.active
    sheet.append(["date", "load (kg)"])
    sheet.append([dt.date(2026, 3, 4), 80.5])
    book.save(os.path.join(here, "days-from-1904.xlsx"))


def formulas():
    """A stored formula value and one that was not stored."""
    path = os.path.join(here, "formulas.xlsx")
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.append(["athlete", "a", "b"])
    sheet.append(["Mira", 1, "=B2+1"])
    sheet.append(["Ola", 2, "=B3+1"])
    sheet.append(["Per", 3, 4])
    sheet.append(["Ria", 4, 5])
    book.save(path)
    with zipfile.ZipFile(path) as z:
        parts = {n: z.read(n) for n in z.namelist()}
    name = "xl/worksheets/sheet1.xml"
    parts[name] = parts[name].replace(b"<f>B2+1</f><v />", b"<f>B2+1</f><v>2</v>").replace(b"<f>B2+1</f><v/>", b"<f>B2+1</f><v>2</v>")
    assert b"<f>B2+1</f><v>2</v>" in parts[name]
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as z:
        for n, data in parts.items():
            z.writestr(n, data)


def ods():
    content = """<?xml version="1.0" encoding="UTF-8"?>
<office:document-content xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" office:version="1.3"><office:body><office:spreadsheet>
<table:table table:name="Roster"><table:table-column table:number-columns-repeated="16384"/>
<table:table-row><table:table-cell office:value-type="string"><text:p>Athlete</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Day</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Femur (cm)</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Symmetry</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Warm-up</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Set 1</text:p></table:table-cell><table:table-cell office:value-type="string"><text:p>Set 2</text:p></table:table-cell><table:table-cell table:number-columns-repeated="16377"/></table:table-row>
<table:table-row><table:table-cell office:value-type="string"><office:annotation><text:p>a remark, no part of the cell</text:p></office:annotation><text:p>Mira<text:s text:c="2"/>Dahl</text:p></table:table-cell><table:table-cell office:value-type="date" office:date-value="2026-03-04"><text:p>04.03.26</text:p></table:table-cell><table:table-cell office:value-type="float" office:value="43.1"><text:p>43,1</text:p></table:table-cell><table:table-cell office:value-type="percentage" office:value="0.885"><text:p>88,5 %</text:p></table:table-cell><table:table-cell office:value-type="time" office:time-value="PT00H12M30S"><text:p>00:12:30</text:p></table:table-cell><table:table-cell office:value-type="float" office:value="5" table:number-columns-repeated="2"><text:p>5</text:p></table:table-cell></table:table-row>
<table:table-row table:number-rows-repeated="2"><table:table-cell office:value-type="string"><text:p>Same row</text:p><text:p>twice</text:p></table:table-cell><table:table-cell/><table:table-cell office:value-type="float" office:value="44"><text:p>44</text:p></table:table-cell></table:table-row>
<table:table-row table:number-rows-repeated="1048572"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>
</table:table></office:spreadsheet></office:body></office:document-content>"""
    with zipfile.ZipFile(os.path.join(here, "roster.ods"), "w", zipfile.ZIP_DEFLATED) as z:
        z.writestr("mimetype", "application/vnd.oasis.opendocument.spreadsheet", zipfile.ZIP_STORED)
        z.writestr("content.xml", content)


def not_a_workbook():
    with zipfile.ZipFile(os.path.join(here, "letters.zip"), "w", zipfile.ZIP_DEFLATED) as z:
        z.writestr("letter.txt", "Dear all,\n" * 50)


roster()
days_from_1904()
formulas()
ods()
not_a_workbook()
