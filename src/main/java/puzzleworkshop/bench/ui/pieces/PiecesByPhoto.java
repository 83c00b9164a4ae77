package puzzleworkshop.bench.ui.pieces;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.component.textfield.IntegerField;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;
import puzzleworkshop.bench.PackingProofs;
import puzzleworkshop.bench.PackingProofs.Taken;
import puzzleworkshop.bench.ui.ProofPicture;
import puzzleworkshop.camera.pieces.PieceCheck;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.mesh.GridPlaces;
import puzzleworkshop.progress.Rework;
import puzzleworkshop.sheets.ui.photo.PhotoPart;
import puzzleworkshop.sheets.ui.photo.PrintedSheet;
import puzzleworkshop.workshop.Stage;

/**
 * Counting by photo: pieces lie apart on the measuring sheet, one photo or several, each measured beside the screen(). The missing
 * piece is named and shown; from here it is made again, or the order goes back to the cut.
 */
@StyleSheet("context://pattern.css")
class PiecesByPhoto extends PhotoPart {

    /** More missing pieces than this are made again by cutting the puzzle anew. */
    private static final int MOST_AGAIN = 6;

    private final transient Order order;
    private final transient CutPattern pattern;
    private final transient PackingProofs proofs;
    private final transient PieceAgainParts parts;
    private final transient Formatter figures;
    private final transient BiConsumer<Rework.What, Stage> backTo;
    private final String who;
    private final PrintedSheet printed;
    private final IntegerField puzzle = new IntegerField();
    private final Button take;
    private final ProgressBar busy = new WorkingBar();
    private final Div result = new Div();
    private final transient List<Taken> taken = new ArrayList<>();
    private transient BookingKey key = BookingKey.fresh();

    PiecesByPhoto(
            Order order,
            CutPattern pattern,
            PackingProofs proofs,
            PieceAgainParts parts,
            PrintedSheet printed,
            Formatter figures,
            String who,
            BiConsumer<Rework.What, Stage> backTo) {
        this.order = order;
        this.pattern = pattern;
        this.proofs = proofs;
        this.parts = parts;
        this.printed = printed;
        this.figures = figures;
        this.who = who;
        this.backTo = backTo;
        addClassName("pw-stack");
        SmallText lead = new SmallText(figures.text("bench.pieces.lead"));
        puzzle.setLabel(figures.text("bench.pieces.puzzle", order.quantity()));
        puzzle.setMin(1);
        puzzle.setMax(order.quantity());
        puzzle.setValue(1);
        puzzle.setStepButtonsVisible(true);
        puzzle.setVisible(order.quantity() > 1);
        take = new Button(figures.text("bench.pieces.take"));
        take.addClassName("bench-big");
        busy.setIndeterminate(true);
        busy.setVisible(false);
        busy.getElement().setAttribute("aria-label", figures.text("bench.pieces.looking"));
        result.addClassName("pw-stack");
        result.getElement().setAttribute("aria-live", "polite");
        add(new H3(figures.text("bench.pieces")), lead, printed, puzzle, upload(), busy, refusal, result);
    }

    private FileUpload upload() {
        FileUpload.Reader look = file -> {
            byte[] content = file.content();
            UiPush.tell(screen(), () -> busy.setVisible(true));
            try {
                requireRoom();
                Taken one = proofs.look(order, content, printed.scale());
                return () -> {
                    requireRoom();
                    taken.add(one);
                    show();
                };
            } finally {
                UiPush.tell(screen(), () -> busy.setVisible(false));
            }
        };
        FileUpload upload = camera(figures, take, look, "image/jpeg", "image/png", "image/webp");
        upload.addClassName("bench-photo");
        return upload;
    }

    /** The list of photos is the screen's; a photo comes in beside it and asks under its lock. */
    private void requireRoom() {
        int[] count = new int[1];
        if (screen().getSession().hasLock()) {
            count[0] = taken.size();
        } else {
            screen().accessSynchronously(() -> count[0] = taken.size());
        }
        if (count[0] >= PackingProofs.MOST_PHOTOS) {
            throw new Refused("bench.pieces.photos", PackingProofs.MOST_PHOTOS);
        }
    }

    private void show() {
        key = BookingKey.fresh();
        result.removeAll();
        take.setText(figures.text(taken.isEmpty() ? "bench.pieces.take" : "bench.pieces.another"));
        if (taken.isEmpty()) {
            return;
        }
        PieceCheck.Result found = proofs.result(order, taken);
        result.add(headline(found));
        found.troubles().stream()
                .map(figures::say)
                .distinct()
                .forEach(words -> result.add(new Note(Note.Kind.BAD, words)));
        if (found.foreign() > 0 && found.troubles().isEmpty()) {
            result.add(new Note(Note.Kind.BAD, figures.text("bench.pieces.foreign", found.foreign())));
        }
        if (!found.missing().isEmpty()) {
            missing(found);
        }
        if (!found.unfound().isEmpty() && found.unfound().size() <= MOST_AGAIN) {
            unfound(found);
        }
        for (int i = taken.size() - 1; i >= 0; i--) {
            result.add(ProofPicture.of(taken.get(i), taken.get(i).photo(found, i), figures));
        }
        result.add(buttons());
    }

    private Paragraph headline(PieceCheck.Result found) {
        int ours = found.seen().size() - found.foreign();
        int expected = pattern.pieces().size();
        return found.isComplete()
                ? new Note(Note.Kind.GOOD, figures.text("bench.pieces.all", expected))
                : new Note(Note.Kind.WARN, figures.text("bench.pieces.some", ours, expected, expected - ours));
    }

    /** While many are missing further photos follow: all of them are marked, but none is named. */
    private void missing(PieceCheck.Result found) {
        if (found.missing().size() <= MOST_AGAIN) {
            for (List<Integer> group : found.missing()) {
                result.add(named(group));
            }
        }
        result.add(drawing(found.missing()));
    }

    /** Something stands in the way of telling, so these are to be looked for on the table. */
    private void unfound(PieceCheck.Result found) {
        result.add(new Paragraph(figures.text(
                "bench.pieces.unfound",
                found.unfound().stream()
                        .map(this::oneOf)
                        .collect(Collectors.joining(figures.text("bench.pieces.and"))))));
        result.add(drawing(found.unfound()));
    }

    private SvgBox drawing(List<List<Integer>> groups) {
        Set<Integer> all = new TreeSet<>();
        groups.forEach(all::addAll);
        SvgBox drawing = new SvgBox("pattern-drawing");
        drawing.getElement().setProperty("innerHTML", PieceAgain.marked(order, pattern, all, figures));
        return drawing;
    }

    private String oneOf(List<Integer> group) {
        return group.stream().map(this::place).collect(Collectors.joining(figures.text("bench.pieces.or")));
    }

    private Div named(List<Integer> group) {
        Div line = new Div();
        line.addClassName("bench-missing");
        if (group.size() > 1) {
            line.add(new Paragraph(figures.text("bench.pieces.alike", oneOf(group))));
        } else {
            line.add(new Paragraph(figures.text("bench.pieces.missing", place(group.getFirst()))));
        }
        for (int number : group) {
            Button again = new Button(figures.text("bench.pieces.again", number), event -> again(number));
            again.addThemeVariants(ButtonVariant.PRIMARY);
            line.add(again);
        }
        return line;
    }

    private String place(int number) {
        return figures.text(
                "bench.pieces.place",
                number,
                GridPlaces.of(pattern).row(pattern.pieces().get(number - 1)),
                GridPlaces.of(pattern).column(pattern.pieces().get(number - 1)));
    }

    private void again(int number) {
        Dialog dialog = new Dialog();
        dialog.setHeaderTitle(figures.text("bench.again"));
        dialog.setWidth("min(46rem, 96vw)");
        PieceAgain again = new PieceAgain(order, pattern, parts, figures);
        again.choose(number);
        dialog.add(again);
        dialog.getFooter().add(new Button(figures.text("planning.close"), event -> dialog.close()));
        dialog.open();
    }

    private Div buttons() {
        BookButton keep = new BookButton(
                figures.text("bench.pieces.keep"),
                () -> Feedback.unlessRefused(figures, "bench.pieces.kept", () -> {
                    proofs.keep(
                            key,
                            order.id(),
                            puzzle.getValue() == null ? 1 : puzzle.getValue(),
                            List.copyOf(taken),
                            who);
                    next();
                }));
        keep.addThemeVariants(ButtonVariant.PRIMARY);
        Button cut =
                new Button(figures.text("bench.pieces.cut"), event -> backTo.accept(Rework.What.PIECE_LOST, Stage.CUT));
        Button drop = new Button(figures.text("bench.pieces.drop"), event -> {
            taken.removeLast();
            show();
        });
        Div buttons = new Div(keep, cut, drop);
        buttons.addClassName("bench-buttons");
        return buttons;
    }

    /** The next puzzle of the order, if there is one. */
    private void next() {
        taken.clear();
        if (puzzle.getValue() != null && puzzle.getValue() < order.quantity()) {
            puzzle.setValue(puzzle.getValue() + 1);
        }
        show();
        result.add(new Note(Note.Kind.GOOD, figures.text("bench.pieces.kept")));
    }
}
