package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Nav;
import com.vaadin.flow.component.html.Span;
import java.util.Locale;
import java.util.Map;
import puzzleworkshop.workshop.Stage;

/** The stages with how many orders stand at each, as ways to their queues. */
final class StageBar extends Nav {

    private final Div stages = new Div();

    StageBar() {
        super();
        stages.addClassName("bench-stages");
        add(stages);
        setAriaLabel(getTranslation("bench.stages"));
    }

    static String address(Stage stage) {
        return "bench/" + stage.name().toLowerCase(Locale.ROOT);
    }

    void show(Map<Stage, Long> counts, Stage chosen) {
        stages.removeAll();
        for (Stage each : Stage.values()) {
            stages.add(link(each, counts.getOrDefault(each, 0L), each == chosen));
        }
        // On a phone the stages lie side by side beyond the edge; only the bar moves, never the page.
        stages.getElement().executeJs("""
            const bring = () => {
              const chosen = this.querySelector('[aria-current]');
              if (chosen) this.scrollLeft += chosen.getBoundingClientRect().left - this.getBoundingClientRect().left
                - (this.clientWidth - chosen.offsetWidth) / 2;
            };
            bring();
            this.benchSize ??= new ResizeObserver(bring);
            this.benchSize.observe(this);
            """);
    }

    private Anchor link(Stage stage, long count, boolean chosen) {
        Anchor link = new Anchor(address(stage));
        Span number = new Span(Long.toString(count));
        number.addClassName("bench-stage-count");
        link.add(new Span(getTranslation(stage.textKey())), number);
        link.addClassName("bench-stage");
        if (chosen) {
            link.getElement().setAttribute("aria-current", "page");
        }
        return link;
    }
}
