package puzzleworkshop.sheets.ui.photo;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Optional;
import java.util.function.Supplier;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.camera.outline.BoardFinder;
import puzzleworkshop.camera.outline.FoundBoard;
import puzzleworkshop.camera.outline.FoundBoards;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.Length;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.workshop.SignedIn;

/**
 * A board's outline from a photo of it on the measuring sheet: print the sheet, confirm its 100 mm line once, take the photo, see
 * the outline over it, drag what is wrong, paint what is bad. Several boards in one photo are gone through one after the other.
 */
public class PhotoEntry extends PhotoPart {

    /** A tolerance is told in tenths, rounded up. */
    private static final double SHOWN_MM = 0.1;

    private final transient Formatter figures;
    private final transient Photos photos;
    private final transient Supplier<Length> thickness;
    private final PrintedSheet printed;
    private final Div result = new Div();
    private transient FoundBoards found;
    private transient OutlineOverPhoto shown;
    private transient byte[] picture;
    private int width;
    private int height;
    private double printScale;
    private transient Length measuredAs;
    private int board;

    /** @param thickness of the board as the form beside says it */
    public PhotoEntry(
            Formatter figures, MeasuredOutlines measured, Photos photos, SignedIn who, Supplier<Length> thickness) {
        this.figures = figures;
        this.photos = photos;
        this.printed = new PrintedSheet(figures, measured, who);
        this.thickness = thickness;
        addClassNames("sheets-photo-entry", "pw-stack");
        result.addClassName("pw-stack");
        add(printed, upload(), refusal, result);
    }

    private FileUpload upload() {
        Button take = new Button(figures.text("sheets.photo.ofboard"));
        take.addThemeVariants(ButtonVariant.PRIMARY);
        FileUpload.Reader look = file -> {
            Length thick = asked();
            double scale = printed.scale();
            return photos.measured(file.content(), read -> {
                FoundBoards boards = BoardFinder.find(read.photo(), thick.mm(), scale);
                byte[] small = read.small();
                int wide = read.photo().width();
                int high = read.photo().height();
                return () -> {
                    clear();
                    width = wide;
                    height = high;
                    picture = small;
                    printScale = scale;
                    measuredAs = thick;
                    found = boards;
                    board = 0;
                    show();
                };
            });
        };
        return camera(figures, take, look, "image/*");
    }

    /** The thickness that stands in its field; read under the screen's lock, since a photo comes in beside it. */
    private Length asked() {
        Length[] asked = new Length[1];
        screen().accessSynchronously(() -> {
            // what was wrong with the photo before would stand there as if it spoke of this one
            refusal.setVisible(false);
            asked[0] = thickness.get();
        });
        return asked[0];
    }

    @Override
    protected void refuse(String words) {
        if (!words.isEmpty()) {
            clear();
        }
        super.refuse(words);
    }

    private void show() {
        result.removeAll();
        shown = new OutlineOverPhoto(figures, found, board, picture, width, height, printScale);
        FoundBoard one = found.boards().get(board);
        Paragraph facts = new Paragraph(figures.text(
                "sheets.photo.found",
                board + 1,
                found.boards().size(),
                Length.mm(one.uncertaintyMm()),
                one.squared(),
                Length.mm(Math.max(SHOWN_MM, Math.ceil(one.squaredWithinMm() / SHOWN_MM) * SHOWN_MM)),
                measuredAs));
        facts.addClassName("pw-soft");
        result.add(facts, shown);
        found.leftOut().stream().map(figures::say).distinct().forEach(text -> {
            Note left = new Note(Note.Kind.BAD, text);
            result.add(left);
        });
    }

    private void clear() {
        found = null;
        shown = null;
        picture = null;
        refusal.setVisible(false);
        result.removeAll();
    }

    /** The outline as it is drawn over the photo now; none when the board is said to be of another thickness since. */
    public Optional<Outline> outline() {
        if (shown == null) {
            super.refuse(figures.text("sheets.photo.none"));
            return Optional.empty();
        }
        Length says = thickness.get();
        // a top that lies nearer to the camera looks larger
        if (!says.equals(measuredAs)) {
            super.refuse(figures.text("sheets.photo.other-thickness", measuredAs, says));
            return Optional.empty();
        }
        super.refuse("");
        return Optional.of(shown.outline());
    }

    /** How far its edge may lie from where it is drawn. */
    public double uncertaintyMm() {
        return found.boards().get(board).uncertaintyMm();
    }

    /** The next board of the same photo, else the next photo. */
    public void next() {
        if (found != null && board + 1 < found.boards().size()) {
            board++;
            show();
        } else {
            clear();
        }
    }
}
