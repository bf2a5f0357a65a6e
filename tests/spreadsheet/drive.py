"""Does what a person does in LibreOffice Calc, by Calc's own means, and saves the workbooks.

drive.py PROFILE JOBS: JOBS is a file of [{"open": path, "save": path, "steps": [[what, sheet, ...], ...]}, ...]. Steps:
["type", sheet, cell, number or text], ["sort", sheet, range with its headings, column, "up" or "down"],
["filter", sheet, range with its headings, column, text], ["delete", sheet, row]. Columns and rows count from 0.
"""

import json
import os
import subprocess
import sys
import time

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.sheet import TableFilterField
from com.sun.star.sheet.FilterOperator import EQUAL
from com.sun.star.table import TableSortField


def value(name, of):
    given = PropertyValue()
    given.Name, given.Value = name, of
    return given


def type_(sheet, cell, typed):
    place = sheet.getCellRangeByName(cell)
    if isinstance(typed, str):
        place.setString(typed)
    else:
        place.setValue(typed)


def sort(sheet, area, column, way):
    field = TableSortField()
    field.Field, field.IsAscending = column, way == "up"
    fields = uno.Any("[]com.sun.star.table.TableSortField", (field,))
    sheet.getCellRangeByName(area).sort((value("SortFields", fields), value("ContainsHeader", True)))


def filter_(sheet, area, column, text):
    cells = sheet.getCellRangeByName(area)
    wanted = TableFilterField()
    wanted.Field, wanted.Operator, wanted.IsNumeric, wanted.StringValue = column, EQUAL, False, text
    description = cells.createFilterDescriptor(True)
    description.ContainsHeader = True
    description.setFilterFields((wanted,))
    cells.filter(description)


def delete(sheet, row):
    sheet.Rows.removeByIndex(row, 1)


STEPS = {"type": type_, "sort": sort, "filter": filter_, "delete": delete}


def office(profile):
    """LibreOffice, started for this alone, and the way to its documents."""
    name = "archwright%d" % os.getpid()
    started = subprocess.Popen(
        ["soffice", "-env:UserInstallation=file://" + profile, "--headless", "--norestore"]
        + ["--accept=pipe,name=%s;urp;" % name]
    )
    local = uno.getComponentContext()
    resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
    began = time.time()
    while True:
        try:
            context = resolver.resolve("uno:pipe,name=%s;urp;StarOffice.ComponentContext" % name)
            break
        except Exception:
            if started.poll() is not None or time.time() - began > 200:
                started.kill()
                raise
            time.sleep(0.2)
    return started, context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)


def main(profile, jobs):
    started, desktop = office(profile)
    try:
        for job in json.load(open(jobs)):
            book = desktop.loadComponentFromURL("file://" + job["open"], "_blank", 0, (value("Hidden", True),))
            for what, sheet, *how in job["steps"]:
                STEPS[what](book.Sheets.getByName(sheet), *how)
            book.calculateAll()
            book.storeToURL("file://" + job["save"], (value("FilterName", "Calc MS Excel 2007 XML"),))
            book.close(True)
    finally:
        try:
            desktop.terminate()
            started.wait(30)
        except Exception:
            started.kill()


main(*sys.argv[1:])
