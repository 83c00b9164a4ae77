package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.LatestAnswer;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.judged.Difficulty;
import puzzleworkshop.pattern.judged.Hold;
import puzzleworkshop.pattern.mesh.PatternCache;

/** The same puzzle in every style, side by side: what holds, how thin the wood gets, how far is cut, how hard it is. */
class StyleComparison extends Div {

    private static final Logger LOG = LoggerFactory.getLogger(StyleComparison.class);

    private final transient PatternCache shelf;
    private final transient Formatter figures;
    private final Button compare = new Button();
    private final Div table = new Div();
    private final transient LatestAnswer<List<List<String>>> columns = new LatestAnswer<>(Duration.ZERO);
    private transient PatternSpec spec;

    StyleComparison(PatternCache shelf, Formatter figures) {
        this.shelf = shelf;
        this.figures = figures;
        addClassName("pw-section");
        compare.setText(getTranslation("pattern.draw.compare"));
        compare.setId("compare-styles");
        compare.setDisableOnClick(true);
        // nothing is drawn yet that could be compared
        compare.setEnabled(false);
        compare.addClickListener(event -> compare());
        table.addClassName("pattern-styles");
        add(compare, table);
    }

    /** Another pattern is shown: what was compared before no longer belongs to it. */
    void take(PatternSpec shown) {
        spec = shown;
        columns.forget();
        table.removeAll();
        compare.setEnabled(true);
    }

    /** Beside the screen, like every drawing. */
    private void compare() {
        PatternSpec of = spec;
        columns.ask(outdated -> columns(of, outdated), this::show, fault -> {
            LOG.error("The styles of {} could not be compared", of, fault);
            table.setText(getTranslation("pattern.draw.fault"));
            compare.setEnabled(true);
        });
    }

    private List<List<String>> columns(PatternSpec of, BooleanSupplier outdated) {
        List<List<String>> all = new ArrayList<>();
        for (CutStyle style : CutStyle.values()) {
            if (outdated.getAsBoolean()) {
                throw new CancellationException();
            }
            all.add(column(of, style));
        }
        return all;
    }

    private List<String> column(PatternSpec of, CutStyle style) {
        String name = figures.text("pattern.style." + style.name());
        try {
            CutPattern pattern = shelf.of(of.withStyle(style));
            Hold hold = Hold.of(pattern);
            return List.of(
                    name,
                    figures.text("pattern.draw.fact.joints.of", hold.holding(), hold.joints()),
                    hold.holding() > 0 ? figures.fine(Length.mm(hold.weakestGripMm())) : "–",
                    figures.fine(Length.mm(hold.narrowestMm())),
                    Double.isFinite(hold.neckMm()) ? figures.fine(Length.mm(hold.neckMm())) : "–",
                    Double.isFinite(hold.bridgeMm()) ? figures.fine(Length.mm(hold.bridgeMm())) : "–",
                    figures.fine(Length.mm(pattern.verified().unlikeMm())),
                    figures.length(Length.mm(pattern.totalLengthMm())),
                    figures.text(Difficulty.of(pattern).textKey()));
        } catch (Refused refused) {
            return List.of(name, figures.say(refused));
        } catch (RuntimeException fault) {
            LOG.error("No pattern could be drawn for {} in {}", of, style, fault);
            return List.of(name, figures.text("pattern.draw.fault"));
        }
    }

    private void show(List<List<String>> columns) {
        List<String> names = List.of(
                "pattern.draw.style",
                "pattern.draw.fact.joints",
                "pattern.draw.fact.grip",
                "pattern.draw.fact.thinnest",
                "pattern.draw.fact.neck",
                "pattern.draw.fact.bridge",
                "pattern.draw.fact.unlike",
                "pattern.draw.fact.length",
                "pattern.draw.fact.hard");
        NativeTableRow top = new NativeTableRow(new NativeTableHeaderCell(getTranslation(names.getFirst())));
        columns.forEach(column -> top.add(new NativeTableHeaderCell(column.getFirst())));
        NativeTableBody body = new NativeTableBody();
        for (int row = 1; row < names.size(); row++) {
            NativeTableRow line = new NativeTableRow(new NativeTableHeaderCell(getTranslation(names.get(row))));
            for (List<String> column : columns) {
                line.add(new NativeTableCell(row < column.size() ? column.get(row) : ""));
            }
            body.add(line);
        }
        table.removeAll();
        table.add(new NativeTable(new NativeTableHeader(top), body));
        compare.setEnabled(true);
    }
}
