package puzzleworkshop.cutting.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CommonPractice;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.SettingState;
import puzzleworkshop.cutting.time.CutTimeTest;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class TestCardTest {

    private static final BoardKind CRAFT = new BoardKind("birch-ply", "CRAFT", Length.mm(3));

    @Test
    void covers_slower_and_faster_than_what_is_dialled_in_but_never_faster_than_the_machine() {
        TestCard card = TestCard.around(setting(60));
        assertThat(card.speeds().getFirst().toMmPerMinute()).isCloseTo(180, within(1e-9));
        assertThat(card.speeds().getLast().toMmPerMinute()).isCloseTo(500, within(1e-9));
        assertThat(TestCard.around(setting(6)).speeds())
                .allSatisfy(speed -> assertThat(speed.mmPerSecond()).isLessThanOrEqualTo(6 + 1e-9));
    }

    @Test
    void squares_lie_on_the_card_and_apart_and_labels_touch_none() {
        TestCard card = TestCard.around(setting(60));
        Bounds whole =
                new Bounds(0, 0, card.size().width().mm(), card.size().height().mm());
        List<Bounds> squares =
                card.squares().stream().map(card::path).map(CurvePath::bounds).toList();
        List<Bounds> labels = card.labels().stream().map(CurvePath::bounds).toList();
        assertThat(squares)
                .hasSize(15)
                .allSatisfy(square -> assertThat(whole.holds(square)).isTrue());
        for (Bounds square : squares) {
            assertThat(squares.stream().filter(other -> other.touches(square))).hasSize(1);
            assertThat(labels).noneMatch(square::touches);
        }
        assertThat(labels).allSatisfy(label -> assertThat(whole.holds(label)).isTrue());
    }

    /** Read back by the JDK's XML parser: real millimetres, one group for each square, each with a title. */
    @Test
    void the_file_is_svg_in_millimetres_with_a_group_for_each_square() throws Exception {
        TestCard card = TestCard.around(setting(60));
        Document svg = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(card.svg().getBytes(StandardCharsets.UTF_8)));
        Element root = svg.getDocumentElement();
        assertThat(root.getAttribute("width")).isEqualTo("60mm");
        assertThat(root.getAttribute("viewBox")).isEqualTo("0 0 60 74");
        assertThat(svg.getElementsByTagName("g").getLength()).isEqualTo(16);
        assertThat(svg.getElementsByTagName("title").getLength()).isEqualTo(15);
        assertThat(card.svg()).contains("id='speed-300-power-100'");
    }

    @Test
    void all_digits_have_strokes_of_their_own() {
        List<String> drawn = "0123456789"
                .chars()
                .mapToObj(c -> StrokeDigits.write(Character.toString(c), 0, 0, 6).stream()
                        .map(CurvePath::svgPathData)
                        .toList()
                        .toString())
                .toList();
        assertThat(drawn).doesNotHaveDuplicates().noneMatch("[]"::equals);
        assertThat(StrokeDigits.write(" ", 0, 0, 6)).isEmpty();
    }

    private static CutSetting setting(double maxCut) {
        Machine machine = CutTimeTest.machine(maxCut, 0.02);
        return new CutSetting(1, machine, CRAFT, CommonPractice.parametersFor(machine, CRAFT), SettingState.UNTRIED);
    }
}
