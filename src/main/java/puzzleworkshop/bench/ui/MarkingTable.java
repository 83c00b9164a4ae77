package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.geometry.MarkingOut;
import puzzleworkshop.sheets.Reservation;
import puzzleworkshop.sheets.Sheet;

/** The lengths by which a tilted blank is marked out on its sheet, with a tape and nothing else. */
class MarkingTable extends Div {

    MarkingTable(Sheet sheet, Reservation held, Formatter figures) {
        addClassName("bench-marking");
        MarkingOut marks = MarkingOut.of(sheet.outline(), held.placement(), held.blank());
        NativeTable table = new NativeTable();
        NativeTableRow head = table.getHead().addRow();
        for (String key : new String[] {"bench.mark.corner", "bench.mark.from-a", "bench.mark.from-b"}) {
            NativeTableHeaderCell cell = new NativeTableHeaderCell(getTranslation(key));
            cell.getElement().setAttribute("scope", "col");
            head.add(cell);
        }
        for (int i = 0; i < marks.corners().size(); i++) {
            MarkingOut.Corner corner = marks.corners().get(i);
            NativeTableRow row = table.getBody().addRow();
            row.addDataCell().setText(String.valueOf(i + 1));
            row.addDataCell().setText(figures.length(corner.fromA()));
            row.addDataCell().setText(figures.length(corner.fromB()));
        }
        SmallText how = new SmallText(getTranslation("bench.mark.how"));
        add(new H3(getTranslation("bench.mark")), how, table);
    }
}
