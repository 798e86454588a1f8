"""Writes the workbooks of this folder with LibreOffice, which reads and writes them independently of
our reader. Run by hand where a fixture is to change:

    apt-get install --no-install-recommends libreoffice-calc python3-uno
    /usr/bin/python3 test/list/workbooks/make.py

The kit is invented.
"""

import pathlib
import subprocess
import tempfile
import time

import uno
from com.sun.star.beans import NamedValue, PropertyValue
from com.sun.star.lang import Locale

HERE = pathlib.Path(__file__).parent.resolve()
FILTERS = {"xlsx": "Calc MS Excel 2007 XML", "ods": "calc8"}


def connect(profile):
    pipe = "kitquill-fixtures"
    office = subprocess.Popen(
        [
            "soffice",
            f"-env:UserInstallation=file://{profile}",
            "--headless",
            "--norestore",
            f"--accept=pipe,name={pipe};urp;",
        ]
    )
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext(
        "com.sun.star.bridge.UnoUrlResolver", local
    )
    for _ in range(120):
        try:
            remote = resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
            break
        except Exception:
            time.sleep(0.5)
    desktop = remote.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", remote)
    return office, desktop


def properties(**values):
    found = []
    for name, value in values.items():
        one = PropertyValue()
        one.Name, one.Value = name, value
        found.append(one)
    return tuple(found)


def save(document, name, kind, **more):
    url = f"file://{HERE}/{name}.{kind}"
    document.storeToURL(url, properties(FilterName=FILTERS[kind], **more))


def put(sheet, rows, row=0, column=0):
    """Texts that begin with = are formulas; texts that begin with ' are texts whatever they hold."""
    for down, cells in enumerate(rows):
        for across, content in enumerate(cells):
            cell = sheet.getCellByPosition(column + across, row + down)
            if content is None:
                continue
            if isinstance(content, (int, float)):
                cell.Value = content
            elif content.startswith("="):
                cell.Formula = content
            else:
                cell.String = content.removeprefix("'")


def show(document, sheet, address, code):
    formats = document.NumberFormats
    locale = Locale("en", "US", "")
    key = formats.queryKey(code, locale, False)
    if key < 0:
        key = formats.addNew(code, locale)
    sheet.getCellRangeByName(address).NumberFormat = key


def new(desktop, *names):
    document = desktop.loadComponentFromURL(
        "private:factory/scalc", "_blank", 0, properties(Hidden=True)
    )
    sheets = document.Sheets
    while sheets.Count < len(names):
        sheets.insertNewByName(f"new{sheets.Count}", sheets.Count)
    for index, name in enumerate(names):
        sheets.getByIndex(index).Name = name
    return document, [sheets.getByIndex(index) for index in range(len(names))]


def wren(desktop):
    """One kit with all that people do in workbooks."""
    document, (main, keys, old, prices) = new(
        desktop, "Main board", "Keyboard", "Old list", "Prices"
    )
    put(main, [["Wren metronome: main board"]])
    main.getCellRangeByName("A1:G1").merge(True)
    header = ["Ref", "Qty", "Value", "Tol", "Package", "Height (mm)", "Remark"]
    put(
        main,
        [
            header,
            ["R1–R4", "=2+2", "4k7", 0.05, 207, 2.5],
            ["R5, R6", "'2", "10k", 0.01, 207, "=1+1.5"],
            ["C1", 1, "100n", 0.1, "RM5", 7, "two lines\nin one cell"],
            ["C2", 1, "22p", 0.05, "RM2.5", 5],
            ["D1", 1, "1N4148", None, "DO-35", 2],
            ["Q1", '=CONCATENATE("";1)', "BC547", None, "TO-92", 5],
            ["R7", 1, 680, 0.05, 207, 2.5],
        ],
        row=2,
    )
    show(document, main, "D4:D10", "0%")
    show(document, main, "E4:E10", "0000")
    main.getRows().getByIndex(6).IsVisible = False  # row 7: C2
    note = main.getCellRangeByName("A10").CellAddress
    main.Annotations.insertNew(note, "R8 R9: a comment is no content")
    put(main, [["Case"], ["Item", "Qty", "Description"]], row=13)
    main.getCellRangeByName("A14:C14").merge(True)
    put(main, [[1, 4, "Screw M3x10"], [2, 4, "Nut M3"]], row=15)
    # Formatted to the last row, as a click on a column's head does.
    main.getCellRangeByName("A1:G1048576").CellBackColor = 0xFFFFF0
    put(keys, [["Ref", "Qty", "Value", "Package"]])
    put(keys, [["R1, R2", 2, "1k", "0207"], ["S1–S3", 3, "6x6 button", "6 mm"]], row=1)
    put(old, [header, ["R1–R9", 9, "4k7"]])
    old.IsVisible = False
    put(prices, [["Dealer", "Price"], ["North Street", 12.5]])
    for kind in FILTERS:
        save(document, "wren", kind)
    document.close(True)


def beside(desktop):
    """Two lists side by side under one title, and cells that the program makes something else of."""
    document, (sheet,) = new(desktop, "Kit")
    put(sheet, [["Left half", None, None, None, "Right half"]])
    sheet.getCellRangeByName("A1:C1").merge(True)
    put(sheet, [["Ref", "Qty", "Value"], ["R1, R2", 2, "47k"], ["C1", 1, "1u"]], row=1)
    put(sheet, [["Ref", "Qty", "Value"], ["R11", 1, "'0.47"], ["R12", 1, 45383]], 1, 4)
    put(sheet, [["L1", 1, 4.7]], 4, 4)
    show(document, sheet, "G4", "YYYY-MM-DD")
    show(document, sheet, "G5", '0.0" µH"')
    for kind in FILTERS:
        save(document, "beside", kind)
    document.close(True)


def locked(desktop):
    document, (sheet,) = new(desktop, "Kit")
    put(sheet, [["Ref", "Value"], ["R1", "10k"]])
    save(document, "locked", "ods", Password="wren")
    secret = NamedValue("OOXPassword", "wren")
    kind = NamedValue("CryptoType", "Standard")
    encryption = uno.Any("[]com.sun.star.beans.NamedValue", (kind, secret))
    save(document, "locked", "xlsx", EncryptionData=encryption)
    document.close(True)


def long(desktop):
    """200 lines whose texts are in other scripts, for the encodings."""
    document, (sheet,) = new(desktop, "Überblick & <Teile>")
    put(sheet, [["Bezeichner", "Menge", "Wert", "Beschreibung"]])
    for index in range(200):
        put(sheet, [[f"R{index + 1}", 1, "4,7 kΩ", f"Widerstand „Größe {index}“ 抵抗"]], index + 1)
    for kind in FILTERS:
        save(document, "long", kind)
    document.close(True)


with tempfile.TemporaryDirectory() as profile:
    office, desktop = connect(profile)
    try:
        wren(desktop)
        beside(desktop)
        locked(desktop)
        long(desktop)
    finally:
        desktop.terminate()
        office.wait(60)
