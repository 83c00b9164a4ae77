package puzzleworkshop.sheets.ui.photo;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.progressbar.ProgressBar;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Consumer;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.camera.outline.BoardFinder;
import puzzleworkshop.camera.outline.FoundBoard;
import puzzleworkshop.camera.outline.FoundBoards;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.list.RackByPhoto;
import puzzleworkshop.sheets.list.RackByPhoto.Recognised;
import puzzleworkshop.workshop.SignedIn;

/**
 * Taking stock of several boards at once: they lie on the measuring sheet, a photo says which sheets of the rack they are, which are
 * new, and which are too alike to tell.
 */
public class StockByPhoto extends PhotoPart {

    private static final Length USUAL = Length.mm(3);

    private final transient Formatter figures;
    private final transient RackByPhoto byPhoto;
    private final transient Photos photos;
    private final transient Consumer<SheetId> here;
    private final PrintedSheet printed;
    private final LengthField thickness;
    private final ProgressBar busy = new WorkingBar();
    private final Div result = new Div();
    private final Set<SheetId> ticked = new HashSet<>();

    /** @param here ticks a sheet on the walk that is going on */
    public StockByPhoto(
            Formatter figures,
            MeasuredOutlines measured,
            RackByPhoto byPhoto,
            Photos photos,
            SignedIn who,
            Consumer<SheetId> here) {
        this.figures = figures;
        this.byPhoto = byPhoto;
        this.photos = photos;
        this.here = here;
        printed = new PrintedSheet(figures, measured, who);
        thickness = new LengthField(figures.text("sheets.stock.photo.thickness"), figures.units());
        thickness.setValue(USUAL);
        busy.setIndeterminate(true);
        busy.setVisible(false);
        result.addClassName("pw-stack");
        result.getElement().setAttribute("aria-live", "polite");
        addClassName("pw-section");
        Paragraph lead = new Paragraph(figures.text("sheets.stock.photo.lead"));
        lead.addClassName("pw-soft");
        add(new H2(figures.text("sheets.stock.photo")), lead, printed, thickness, upload(), busy, refusal, result);
    }

    private FileUpload upload() {
        Button take = new Button(figures.text("sheets.stock.photo.take"));
        FileUpload.Reader look = file -> {
            byte[] content = file.content();
            Length[] thick = new Length[1];
            screen().accessSynchronously(() -> {
                busy.setVisible(true);
                thick[0] = thickness.getValue();
            });
            try {
                if (thick[0] == null) {
                    throw new Refused("camera.outline.thickness");
                }
                double scale = printed.scale();
                return photos.measured(content, read -> {
                    FoundBoards found = BoardFinder.find(read.photo(), thick[0].mm(), scale);
                    List<Recognised> boards = byPhoto.in(found);
                    String drawing = drawing(read, found, boards, scale);
                    return () -> show(found, boards, drawing);
                });
            } finally {
                UiPush.tell(screen(), () -> busy.setVisible(false));
            }
        };
        return camera(figures, take, look, "image/*");
    }

    /** The photo, each board framed with its letter. */
    private String drawing(Photos.ToMeasure read, FoundBoards found, List<Recognised> boards, double printScale) {
        Svg svg = Svg.of(
                0,
                0,
                read.smallWidth(),
                read.smallHeight(),
                figures.text("sheets.stock.photo.drawing"),
                figures.text("sheets.stock.photo.drawing.words"));
        svg.image(
                0,
                0,
                read.smallWidth(),
                read.smallHeight(),
                "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(read.small()));
        double[] uv = new double[2];
        for (Recognised board : boards) {
            FoundBoard shape = found.boards().get(board.board());
            StringBuilder path = new StringBuilder();
            double x = 0;
            double y = 0;
            for (Point spot : shape.outer()) {
                found.sheet()
                        .view()
                        .project(spot.xMm() / printScale, spot.yMm() / printScale, -shape.heightMm() / printScale, uv);
                path.append(path.isEmpty() ? 'M' : 'L')
                        .append(String.format(Locale.ROOT, "%.0f %.0f", uv[0] * read.scale(), uv[1] * read.scale()));
                x += uv[0] * read.scale() / shape.outer().size();
                y += uv[1] * read.scale() / shape.outer().size();
            }
            svg.path(path.append('Z').toString(), board.isSure() ? "sheets-photo-edge" : "sheets-photo-bad");
            svg.text(x, y, read.smallWidth() / 18.0, "middle", letter(board.board()), "sheets-photo-letter");
        }
        return svg.markup();
    }

    private static String letter(int board) {
        return board < 26 ? String.valueOf((char) ('A' + board)) : String.valueOf(board + 1);
    }

    private void show(FoundBoards found, List<Recognised> boards, String drawing) {
        result.removeAll();
        SvgBox over = new SvgBox("sheets-stock-photo");
        over.getElement().setProperty("innerHTML", drawing);
        result.add(over);
        found.leftOut().stream().map(figures::say).distinct().forEach(words -> {
            Note left = new Note(Note.Kind.BAD, words);
            result.add(left);
        });
        List<SheetId> sure = boards.stream()
                .filter(Recognised::isSure)
                .map(board -> board.sheets().getFirst())
                .filter(id -> !ticked.contains(id))
                .toList();
        if (!sure.isEmpty()) {
            Button all = new Button(figures.text("sheets.stock.photo.tick", sure.size()), event -> {
                sure.forEach(this::tick);
                show(found, boards, drawing);
            });
            all.addThemeVariants(ButtonVariant.PRIMARY);
            result.add(all);
        }
        boards.forEach(board -> result.add(line(board, () -> show(found, boards, drawing))));
    }

    private Div line(Recognised board, Runnable again) {
        Div line = new Div();
        line.addClassNames("pw-row", "sheets-stock-line");
        String name = letter(board.board());
        if (board.sheets().isEmpty()) {
            line.add(
                    new Span(figures.text("sheets.stock.photo.new", name)),
                    new Anchor("sheets/enter", figures.text("sheets.stock.photo.enter")));
        } else if (board.isSure()) {
            SheetId id = board.sheets().getFirst();
            line.add(new Span(figures.text(
                    ticked.contains(id) ? "sheets.stock.photo.ticked" : "sheets.stock.photo.is", name, id.toString())));
        } else {
            line.add(new Span(figures.text("sheets.stock.photo.alike", name)));
            for (SheetId id : board.sheets()) {
                Button one = new Button(id.toString(), event -> {
                    tick(id);
                    again.run();
                });
                one.setEnabled(!ticked.contains(id));
                one.setAriaLabel(figures.text("sheets.stock.tickednumber", id.toString()));
                line.add(one);
            }
        }
        return line;
    }

    private void tick(SheetId id) {
        here.accept(id);
        ticked.add(id);
    }
}
