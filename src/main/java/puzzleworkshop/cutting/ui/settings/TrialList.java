package puzzleworkshop.cutting.ui.settings;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import java.util.List;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.TrialEvidence;
import puzzleworkshop.cutting.settings.TrialPhoto;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;

/** The trials of a setting, newest first, twenty at a time. */
class TrialList extends Div {

    private static final int AT_A_TIME = 20;

    private final transient Settings settings;
    private final transient TrialEvidence evidence;
    private final transient Formatter figures;
    private final Div lines = new Div();
    private int shown;

    TrialList(Settings settings, TrialEvidence evidence, Formatter figures) {
        this.settings = settings;
        this.evidence = evidence;
        this.figures = figures;
        addClassName("pw-section");
        add(new H2(figures.text("cutting.trials", evidence.trials().size())));
        if (evidence.trials().isEmpty()) {
            Paragraph none = new Paragraph(figures.text("cutting.trials.none"));
            none.addClassName("pw-soft");
            add(none);
            return;
        }
        lines.addClassName("cutting-trials");
        Button more = new Button(figures.text("cutting.trials.more"), event -> {
            more();
            event.getSource().setVisible(shown < evidence.trials().size());
        });
        more.addThemeVariants(ButtonVariant.TERTIARY);
        add(lines, more);
        more();
        more.setVisible(shown < evidence.trials().size());
    }

    private void more() {
        List<Trial> all = SettingView.newestFirst(evidence);
        int end = Math.min(all.size(), shown + AT_A_TIME);
        all.subList(shown, end).forEach(trial -> lines.add(line(trial)));
        shown = end;
    }

    private Div line(Trial trial) {
        Verdict.Kind kind = trial.finding().isGood()
                ? Verdict.Kind.GOOD
                : trial.finding().result() == Trial.Result.THROUGH ? Verdict.Kind.WARN : Verdict.Kind.BAD;
        Span energy = new Span(figures.text("cutting.energy", trial.parameters().lineEnergy(evidence.beam())));
        energy.addClassName("pw-number");
        Span dialled = new Span(figures.text(
                "cutting.dialled",
                figures.number(trial.parameters().speed().toMmPerMinute(), 0),
                trial.parameters().power(),
                trial.parameters().passes()));
        dialled.addClassName("pw-small");
        Div first = new Div(
                new Verdict(
                        kind,
                        figures.text(
                                "cutting.trial.outcome",
                                figures.text(trial.finding().result().textKey()),
                                trial.finding().charring())),
                energy,
                dialled);
        first.addClassName("cutting-trial-first");
        Span who = new Span(
                figures.text("cutting.trial.by", figures.text(trial.source().textKey()), trial.by(), trial.at()));
        who.addClassName("pw-small");
        Div line = new Div(first, who);
        line.addClassName("cutting-trial");
        trial.finding().gapMeasured().ifPresent(gap -> {
            Span measured =
                    new Span(figures.text(trial.gapWasRight() ? "cutting.trial.gap" : "cutting.trial.gap.off", gap));
            measured.addClassName("pw-small");
            line.add(measured);
        });
        if (!trial.finding().note().isBlank()) {
            line.add(new Paragraph(trial.finding().note()));
        }
        if (trial.hasPhoto()) {
            line.add(photo(trial));
        }
        return line;
    }

    private Button photo(Trial trial) {
        Image small = image(trial);
        Button open = new Button(small, event -> {
            Image large = image(trial);
            large.addClassName("cutting-photo-large");
            Dialog dialog = new Dialog(large);
            dialog.setHeaderTitle(figures.text("cutting.photo.of", trial.at()));
            dialog.getFooter().add(new Button(figures.text("cutting.close"), close -> dialog.close()));
            dialog.open();
        });
        open.setAriaLabel(figures.text("cutting.photo.of", trial.at()));
        open.addClassName("cutting-photo");
        return open;
    }

    private Image image(Trial trial) {
        long id = trial.id();
        return new Image(
                DownloadHandler.fromInputStream(event -> {
                            TrialPhoto photo = settings.photo(id).orElseThrow();
                            return new DownloadResponse(
                                    new ByteArrayInputStream(photo.bytes()),
                                    "trial-" + id,
                                    photo.mediaType(),
                                    photo.bytes().length);
                        })
                        .inline(),
                figures.text("cutting.photo.of", trial.at()));
    }
}
