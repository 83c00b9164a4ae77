package puzzleworkshop.boards.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import java.util.List;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.list.SheetLabels;

/** The way to the labels of some sheets, as one PDF. */
final class SheetLabelsLink extends Anchor {

    SheetLabelsLink(List<SheetId> ids, SheetRack rack, SheetLabels labels, String said) {
        super(
                DownloadHandler.fromInputStream(event -> {
                    List<Sheet> these =
                            ids.stream().flatMap(id -> rack.find(id).stream()).toList();
                    byte[] pdf = labels.pdf(
                            these,
                            SheetLabels.base(
                                    event.getRequest().getHeader("host"),
                                    event.getRequest().isSecure()));
                    return new DownloadResponse(
                            new ByteArrayInputStream(pdf),
                            "sheet-" + ids.getFirst() + "-label.pdf",
                            "application/pdf",
                            pdf.length);
                }),
                said);
    }
}
