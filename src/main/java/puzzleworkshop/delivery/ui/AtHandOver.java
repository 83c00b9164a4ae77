package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.bench.Checklist;
import puzzleworkshop.bench.HandOverChecks;
import puzzleworkshop.bench.ui.StagePart;
import puzzleworkshop.delivery.HandOvers;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.workshop.Stage;

/** At hand-over: which way it goes, where to, and what is still to be paid, open on the card where it is needed. */
@org.springframework.stereotype.Component
class AtHandOver implements StagePart {

    private final HandOvers handOvers;
    private final HandOverChecks checks;
    private final Formatter figures;

    AtHandOver(HandOvers handOvers, HandOverChecks checks, Formatter figures) {
        this.handOvers = handOvers;
        this.checks = checks;
        this.figures = figures;
    }

    @Override
    public Stage stage() {
        return Stage.HAND_OVER;
    }

    @Override
    public Optional<Component> show(Waiting waiting, Runnable again) {
        return handOvers.of(waiting.order()).map(this::part);
    }

    @Override
    public Optional<List<Checklist.Line>> checklist(Waiting waiting) {
        return Optional.of(checks.of(waiting.order()));
    }

    private Div part(HandOvers.Entry entry) {
        Div part = new Div(new H3(entry.way().name()));
        part.addClassName("pw-stack");
        if (!entry.isCollected()) {
            part.add(new WhereTo(entry, figures));
        }
        part.add(new ToPay(entry, figures));
        Anchor day = new Anchor("hand-overs", figures.text("delivery.title"));
        day.addClassName("bench-next-way");
        part.add(day);
        return part;
    }
}
