package puzzleworkshop.delivery.ui.returns;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import puzzleworkshop.delivery.returns.Complaint;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.delivery.returns.InCommon;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.insights.ui.FiguresSection;
import puzzleworkshop.sheets.board.RackSettings;

/** On Figures: what complaints have in common, over the twelve months of the other figures. */
@org.springframework.stereotype.Component
class InCommonSection implements FiguresSection {

    private static final int MOST_LINKS = 12;

    private final Complaints complaints;
    private final RackSettings rack;
    private final Formatter figures;

    InCommonSection(Complaints complaints, RackSettings rack, Formatter figures) {
        this.complaints = complaints;
        this.rack = rack;
        this.figures = figures;
    }

    @Override
    public int place() {
        return 60;
    }

    @Override
    public Optional<Component> show(LocalDate since) {
        List<Complaint> all = complaints.since(since);
        PageSection section = new PageSection(figures.text("delivery.figures.title"));
        if (all.isEmpty()) {
            section.add(new Paragraph(figures.text("delivery.figures.none", since)));
            return Optional.of(section);
        }
        section.add(new Paragraph(figures.text("delivery.figures.lead", all.size(), since)));
        section.add(groups("delivery.figures.stage", InCommon.byStage(all), figures::text));
        section.add(
                groups("delivery.figures.board", InCommon.byBoard(all, complaints.leftOnBoards(since)), rack::inWords));
        section.add(groups("delivery.figures.setting", InCommon.bySetting(all), UnaryOperator.identity()));
        return Optional.of(section);
    }

    private Component groups(String title, List<InCommon.Group> groups, UnaryOperator<String> words) {
        if (groups.isEmpty()) {
            return new Div();
        }
        return new Still(Markup.div(
                "",
                Markup.of("h3", "", figures.text(title)),
                Markup.of(
                        "ul",
                        "",
                        groups.stream().map(group -> item(group, words)).toList())));
    }

    private Markup item(InCommon.Group group, UnaryOperator<String> words) {
        List<Markup> parts = new ArrayList<>();
        parts.add(Markup.span(
                group.of().isPresent()
                        ? figures.text(
                                "delivery.figures.share",
                                words.apply(group.what()),
                                group.orders(),
                                group.of().get(),
                                figures.number(group.atLeast() * 100, 0),
                                figures.number(group.atMost() * 100, 0))
                        : figures.text(
                                "delivery.figures.count",
                                words.apply(group.what()),
                                group.complaints().size())));
        group.complaints().stream()
                .map(one -> one.order().number())
                .distinct()
                .limit(MOST_LINKS)
                .forEach(number -> {
                    parts.add(Markup.words(" · "));
                    parts.add(Markup.link("orders/" + number, number));
                });
        return Markup.of("li", "", parts);
    }
}
