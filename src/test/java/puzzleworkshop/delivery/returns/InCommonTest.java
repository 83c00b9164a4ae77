package puzzleworkshop.delivery.returns;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.workshop.Stage;

@DisplayNameGeneration(ReplaceUnderscores.class)
class InCommonTest {

    @Test
    void the_share_of_a_board_has_the_score_interval() {
        // 15 of 30: 0.3315 to 0.6685 (Wilson 1927, Journal of the American Statistical Association 22)
        List<Complaint> fifteen = new ArrayList<>();
        for (int i = 1; i <= 15; i++) {
            fifteen.add(complaint(i, Stage.CUT, "poplar-ply, 3.0 mm", ""));
        }
        InCommon.Group group =
                InCommon.byBoard(fifteen, Map.of("poplar-ply, 3.0 mm", 30)).getFirst();
        assertThat(group.atLeast()).isCloseTo(0.3315, within(5e-5));
        assertThat(group.atMost()).isCloseTo(0.6685, within(5e-5));
    }

    @Test
    void two_complaints_about_one_order_are_one_order_that_came_back() {
        InCommon.Group group = InCommon.byBoard(
                        List.of(complaint(1, Stage.CUT, "birch", ""), complaint(1, Stage.PACK, "birch", "")),
                        Map.of("birch", 10))
                .getFirst();
        assertThat(group.complaints()).hasSize(2);
        assertThat(group.orders()).isEqualTo(1);
    }

    @Test
    void the_most_frequent_stage_stands_first_and_cuts_without_a_record_are_no_setting() {
        List<Complaint> all = List.of(
                complaint(1, Stage.PRINT, "birch", ""),
                complaint(2, Stage.CUT, "birch", "laser, 300 mm/min"),
                complaint(3, Stage.CUT, "poplar", "laser, 300 mm/min"));
        assertThat(InCommon.byStage(all))
                .extracting(InCommon.Group::what)
                .first()
                .isEqualTo(Stage.CUT.textKey());
        assertThat(InCommon.bySetting(all))
                .singleElement()
                .extracting(one -> one.complaints().size())
                .isEqualTo(2);
        assertThat(InCommon.byStage(List.of())).isEmpty();
    }

    private static Complaint complaint(long order, Stage stage, String board, String setting) {
        return new Complaint(
                order,
                new OrderRef(new OrderId(order), "2026-" + order),
                Instant.EPOCH,
                "mara",
                false,
                Complaint.Reason.CHARRED,
                stage,
                "",
                board,
                setting,
                Optional.empty());
    }
}
