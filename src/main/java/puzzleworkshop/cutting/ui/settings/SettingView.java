package puzzleworkshop.cutting.ui.settings;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.NextTry;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.SuccessBound;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Source;
import puzzleworkshop.cutting.settings.TrialEvidence;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.workshop.SignedIn;

/** One setting: what is dialled in, what the trials say, what to try next, and the form to write a try down. */
@Route("machines/settings")
@PermitAll
@StyleSheet("context://cutting.css")
public class SettingView extends Div implements HasUrlParameter<Long>, HasDynamicTitle {

    private final transient Settings settings;
    private final transient CutJobs jobs;
    private final transient BoardNames boards;
    private final transient ObjectProvider<TestCardDialog> cards;
    private final transient Formatter figures;
    private final transient SignedIn who;
    private long id;

    public SettingView(
            Settings settings,
            CutJobs jobs,
            BoardNames boards,
            ObjectProvider<TestCardDialog> cards,
            Formatter figures,
            SignedIn who) {
        this.settings = settings;
        this.jobs = jobs;
        this.boards = boards;
        this.cards = cards;
        this.figures = figures;
        this.who = who;
        addClassName("pw-page");
    }

    @Override
    public void setParameter(BeforeEvent event, Long settingId) {
        id = settingId;
        show();
    }

    private void show() {
        removeAll();
        Optional<CutSetting> found = settings.find(id);
        if (found.isEmpty()) {
            add(
                    new Anchor("machines", figures.text("cutting.back")),
                    new Paragraph(figures.text("cutting.setting.gone")));
            return;
        }
        CutSetting setting = found.get();
        TrialEvidence evidence = settings.evidence(setting);
        Optional<NextTry> next = settings.nextTry(setting);
        Div left = new Div(dialled(setting), proof(setting, evidence, next));
        Div right = new Div(tryNext(setting, next), new TrialList(settings, evidence, figures));
        left.addClassName("cutting-column");
        right.addClassName("cutting-column");
        Div columns = new Div(left, right);
        columns.addClassName("cutting-columns");
        add(head(setting), columns);
    }

    private Div head(CutSetting setting) {
        Button card = new Button(
                figures.text("cutting.card.open"),
                event -> cards.getObject().show(setting, this::show).open());
        card.addClassName("pw-push");
        Button cut = new Button(
                figures.text("cutting.cut.open"),
                event -> new TestCutDialog(setting, figures, wish -> {
                            CutJob job = jobs.prepare(wish, who.name());
                            getUI().ifPresent(ui -> ui.navigate("machines/cuts/" + job.id()));
                        })
                        .open());
        Div head = new Div(
                new Anchor(
                        "machines?machine=" + setting.machine().id(),
                        setting.machine().name()),
                new H1(boards.of(setting.board())),
                new StateMark(setting.state(), figures),
                card,
                cut);
        head.addClassName("pw-page-head");
        return head;
    }

    private Div dialled(CutSetting setting) {
        ParameterFields fields = new ParameterFields(setting, setting.parameters(), figures);
        Button choose = new Button(
                figures.text("cutting.choose.do"),
                event -> fields.read().ifPresent(typed -> {
                    if (Feedback.unlessRefused(
                            figures,
                            "cutting.saved",
                            () -> settings.choose(setting.machine(), setting.board(), typed, who.name()))) {
                        show();
                    }
                }));
        Div form = new Div(fields, choose);
        form.addClassName("pw-stack");
        form.setVisible(false);
        Button open = new Button(figures.text("cutting.choose"), event -> form.setVisible(!form.isVisible()));
        open.addThemeVariants(ButtonVariant.SMALL);
        Paragraph energy = new Paragraph(figures.text("cutting.energy.of", setting.lineEnergy()));
        energy.addClassName("pw-soft");
        Div head = new Div(new H2(figures.text("cutting.dialled.title")), open);
        head.addClassName("cutting-section-head");
        Div section = new Div(head, new DialledIn(setting.parameters(), figures), energy, form);
        section.addClassName("pw-section");
        return section;
    }

    private Div proof(CutSetting setting, TrialEvidence evidence, Optional<NextTry> next) {
        SmallText rule = new SmallText(figures.text(
                "cutting.evidence.rule",
                TrialEvidence.GOOD_IN_A_ROW,
                Trial.Finding.ACCEPTABLE_CHARRING,
                TrialEvidence.BAD_OF_RECENT,
                TrialEvidence.RECENT,
                TrialEvidence.ROW_THAT_PROVES));
        SuccessBound bound = evidence.bound(setting.parameters());
        Paragraph sure = new Paragraph(figures.text(
                "cutting.evidence.bound", bound.good(), bound.cuts(), figures.number(100 * bound.atLeast(), 0)));
        sure.setVisible(bound.cuts() > 0);
        PageSection section = new PageSection(
                figures.text("cutting.evidence"), new TrialPlot(figures).show(setting, evidence, next), sure, rule);
        return section;
    }

    private Div tryNext(CutSetting setting, Optional<NextTry> next) {
        PageSection section = new PageSection(figures.text(next.isPresent() ? "cutting.next" : "cutting.next.none"));
        next.ifPresentOrElse(
                proposal -> {
                    Paragraph reason = new Paragraph(figures.say(proposal.reason()));
                    reason.addClassName("pw-note");
                    reason.getElement().setAttribute("data-kind", proposal.setGapFirst() ? "warn" : "good");
                    section.add(reason, new DialledIn(proposal.parameters(), figures));
                },
                () -> section.add(new Paragraph(figures.text("cutting.next.proven"))));
        ParameterFields fields =
                new ParameterFields(setting, next.map(NextTry::parameters).orElse(setting.parameters()), figures);
        FindingForm finding = new FindingForm(figures);
        BookingKey key = BookingKey.fresh();
        Button save = new BookButton(figures.text("cutting.try.save"), () -> {
            Optional<CutParameters> typed = fields.read();
            Optional<Finding> seen = finding.read().filter(any -> typed.isPresent());
            boolean recorded = seen.isPresent()
                    && Feedback.unlessRefused(
                            figures,
                            "cutting.try.saved",
                            () -> settings.record(
                                    key,
                                    setting.machine(),
                                    setting.board(),
                                    typed.get(),
                                    seen.get(),
                                    Source.TRY,
                                    who.name(),
                                    finding.photo()));
            if (recorded) {
                show();
            }
            return recorded;
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        save.addClassName("cutting-big");
        Div form = new Div(fields, finding, save);
        form.addClassName("pw-stack");
        form.setVisible(false);
        Button open = new Button(figures.text("cutting.try.open"), event -> form.setVisible(!form.isVisible()));
        open.addThemeVariants(ButtonVariant.PRIMARY);
        section.add(open, form);
        return section;
    }

    /** Newest first. */
    static List<Trial> newestFirst(TrialEvidence evidence) {
        return evidence.trials().reversed();
    }

    @Override
    public String getPageTitle() {
        return settings.find(id).map(setting -> boards.of(setting.board())).orElse(figures.text("cutting.title"));
    }
}
