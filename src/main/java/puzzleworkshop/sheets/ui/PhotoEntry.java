package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.AttachmentType;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import com.vaadin.flow.server.streams.UploadHandler;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.artwork.pixels.Frame;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.outline.BoardFinder;
import puzzleworkshop.camera.outline.FoundBoards;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.camera.sheet.SheetPaper;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.LengthField;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.workshop.SignedIn;

/**
 * A board's outline from a photo of it on the measuring sheet: print the sheet, confirm its 100 mm line once, take the photo, see
 * the outline over it, drag what is wrong, paint what is bad. Several boards in one photo are gone through one after the other.
 */
class PhotoEntry extends Div {

    private final transient Formatter figures;
    private final transient MeasuredOutlines measured;
    private final transient SignedIn who;
    private final transient Photos photos;
    private final transient Supplier<Length> thickness;
    private final Div printer = new Div();
    private final Div result = new Div();
    private final Paragraph refusal = new Paragraph();
    private transient FoundBoards found;
    private transient OutlineOverPhoto shown;
    private transient byte[] picture;
    private transient Frame frame;
    private int board;

    /** @param thickness of the board as the form beside says it */
    PhotoEntry(Formatter figures, MeasuredOutlines measured, Photos photos, SignedIn who, Supplier<Length> thickness) {
        this.figures = figures;
        this.measured = measured;
        this.photos = photos;
        this.who = who;
        this.thickness = thickness;
        addClassName("sheets-photo-entry");
        refusal.addClassName("pw-note");
        refusal.getElement().setAttribute("data-kind", "bad");
        refusal.getElement().setAttribute("role", "alert");
        refusal.setVisible(false);
        add(papers(), printer, upload(), refusal, result);
        printer();
    }

    private Div papers() {
        Div papers = new Div(new Span(figures.text("sheets.photo.print")));
        papers.addClassName("pw-row");
        for (MeasuringSheet sheet : MeasuringSheet.values()) {
            papers.add(paper(sheet, false));
        }
        papers.add(paper(MeasuringSheet.CARDS, true));
        return papers;
    }

    private Anchor paper(MeasuringSheet sheet, boolean onLetter) {
        String key =
                "sheets.photo.paper." + sheet.name().toLowerCase(java.util.Locale.ROOT) + (onLetter ? ".letter" : "");
        String name = figures.text(key);
        Anchor link = new Anchor(
                DownloadHandler.fromInputStream(event -> {
                    byte[] pdf = SheetPaper.pdf(
                            sheet, name, List.of(figures.text("sheets.photo.paper.line"), name), onLetter);
                    return new DownloadResponse(
                            new ByteArrayInputStream(pdf), "measuring-sheet.pdf", "application/pdf", pdf.length);
                }),
                AttachmentType.DOWNLOAD,
                name);
        link.setRouterIgnore(true);
        return link;
    }

    /** The 100 mm line: asked until it is confirmed, then only told. */
    private void printer() {
        printer.removeAll();
        printer.addClassName("pw-row");
        Optional<Length> line = measured.printedLine();
        LengthField length = new LengthField(figures.text("sheets.photo.line"), figures.units());
        length.setValue(line.orElse(Length.mm(MeasuringSheet.LINE)));
        Button right = new Button(figures.text("sheets.photo.line.confirm"), event -> {
            if (Feedback.unlessRefused(
                    figures,
                    "sheets.photo.line.confirmed",
                    () -> measured.confirmPrint(length.getValue(), who.name()))) {
                printer();
            }
        });
        if (line.isEmpty()) {
            right.addThemeVariants(ButtonVariant.PRIMARY);
            printer.add(new Paragraph(figures.text("sheets.photo.line.first")));
        }
        printer.add(length, right);
    }

    private Upload upload() {
        Upload upload = new Upload();
        upload.setUploadHandler(UploadHandler.inMemory((meta, bytes) -> {
            measure(bytes);
            upload.clearFileList();
        }));
        upload.setAcceptedMimeTypes("image/*");
        upload.setMaxFileSize(Photos.MOST_BYTES);
        upload.setDropAllowed(false);
        Button take = new Button(figures.text("sheets.photo.ofboard"));
        take.addThemeVariants(ButtonVariant.PRIMARY);
        upload.setUploadButton(take);
        return upload;
    }

    private void measure(byte[] bytes) {
        clear();
        try {
            double scale = measured.printScale();
            Frame read = photos.pixels(bytes);
            FoundBoards boards = BoardFinder.find(photo(read), thickness.get().mm(), scale);
            frame = read;
            picture = OutlineOverPhoto.small(read);
            found = boards;
            board = 0;
            show();
        } catch (Refused refused) {
            refusal.setText(figures.say(refused));
            refusal.setVisible(true);
        }
    }

    private static Photo photo(Frame frame) {
        int[] rgb = new int[frame.width() * frame.height()];
        byte[] s = frame.samples();
        for (int i = 0; i < rgb.length; i++) {
            rgb[i] = (s[3 * i] & 0xFF) << 16 | (s[3 * i + 1] & 0xFF) << 8 | s[3 * i + 2] & 0xFF;
        }
        return new Photo(frame.width(), frame.height(), rgb);
    }

    private void show() {
        result.removeAll();
        shown = new OutlineOverPhoto(
                figures, found, board, picture, frame.width(), frame.height(), measured.printScale());
        Paragraph facts = new Paragraph(figures.text(
                "sheets.photo.found",
                board + 1,
                found.boards().size(),
                Length.mm(found.boards().get(board).uncertaintyMm()),
                found.boards().get(board).squared()));
        facts.addClassName("pw-soft");
        result.add(facts, shown);
        found.leftOut().stream().map(figures::say).distinct().forEach(text -> {
            Paragraph left = new Paragraph(text);
            left.addClassName("pw-note");
            left.getElement().setAttribute("data-kind", "bad");
            result.add(left);
        });
    }

    private void clear() {
        found = null;
        shown = null;
        frame = null;
        picture = null;
        refusal.setVisible(false);
        result.removeAll();
    }

    /** The outline as it is drawn over the photo now. */
    Optional<Outline> outline() {
        if (shown == null) {
            refusal.setText(figures.text("sheets.photo.none"));
            refusal.setVisible(true);
            return Optional.empty();
        }
        return Optional.of(shown.outline());
    }

    double uncertaintyMm() {
        return found.boards().get(board).uncertaintyMm();
    }

    /** The next board of the same photo, else the next photo. */
    void next() {
        if (found != null && board + 1 < found.boards().size()) {
            board++;
            show();
        } else {
            clear();
        }
    }
}
