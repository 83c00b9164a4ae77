package puzzleworkshop.insights.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.insights.work.FigureRows;
import puzzleworkshop.insights.work.Topic;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.support.MetricHouse;

/** Plots of the figures of the work. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class FigurePlotTest {

    private static final Pattern MIDDLE = Pattern.compile("<text x='([\\d.]+)'[^>]*text-anchor='middle'[^>]*>([^<]+)<");

    /** At 11 px no letter of these words is wider than 7 px; the drawing is 720 wide. */
    @Test
    void the_name_of_the_first_of_fifty_weeks_is_not_cut_off_at_the_edge() {
        List<FigureRows.Row> weeks = IntStream.rangeClosed(1, 53)
                .mapToObj(week -> new FigureRows.Row("", "W" + (10 + week % 42) + " Mon", new double[] {week % 5}))
                .toList();
        FigureRows table = new FigureRows(
                Topic.ON_TIME,
                Sentence.of("insights.work.first.day"),
                List.of(new FigureRows.Column(Sentence.of("insights.work.first.day"), FigureRows.Unit.COUNT, "a")),
                weeks,
                true);
        Matcher words =
                MIDDLE.matcher(FigurePlot.of(table, MetricHouse.figures()).markup());
        int seen = 0;
        while (words.find()) {
            double half = words.group(2).strip().length() * 7 / 2.0;
            assertThat(Double.parseDouble(words.group(1))).as(words.group(2)).isBetween(half, 720 - half);
            seen++;
        }
        assertThat(seen).isGreaterThan(5);
    }

    @Test
    void on_a_phone_lying_bars_have_their_words_above_and_their_numbers_on_the_screen() {
        String longest = "Setting: The small grey laser, 225 mm/min, 100 %, 1 ×";
        FigureRows table = new FigureRows(
                Topic.COMPLAINTS,
                Sentence.of("insights.work.first.day"),
                List.of(new FigureRows.Column(Sentence.of("insights.work.first.day"), FigureRows.Unit.MONEY, "a")),
                List.of(
                        new FigureRows.Row("", longest, new double[] {12345.67}),
                        new FigureRows.Row("", "Stage: Cut", new double[] {1})),
                false);
        String drawing = FigurePlot.narrow(table, MetricHouse.figures()).markup();
        assertThat(drawing).contains(longest).contains("12,345.67");
        Matcher bars =
                Pattern.compile("<rect x='([\\d.]+)'[^>]*?width='([\\d.]+)'").matcher(drawing);
        int seen = 0;
        while (bars.find()) {
            assertThat(Double.parseDouble(bars.group(1)) + Double.parseDouble(bars.group(2)))
                    .as("leaves room for nine digits of 6 beside it")
                    .isLessThanOrEqualTo(330 - 6 - 9 * 6);
            seen++;
        }
        assertThat(seen).isEqualTo(2);
    }
}
