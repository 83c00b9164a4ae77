package puzzleworkshop.pricing.cost;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.workshop.Stage;

/**
 * What rejects cost, stage by stage: a good one leaving a stage has cost what was spent up to and in that stage ÷
 * (1 − r). A reject late in the way loses everything spent before it. Set-up counts as spent in its stage: making one
 * again means setting up again.
 *
 * <p>Source: design formula of the workshop; the same as the yield chain of process costing (common practice).
 */
public final class StageByStage {

    /** What is spent in one stage for the good ones, before rejects. */
    public record Spent(Stage stage, Money amount, Percent rejects) {}

    /**
     * After one stage.
     *
     * @param soFar spent on what leaves the stage, its failures not yet counted
     * @param good what a good one has cost when it leaves
     * @param lost good − soFar: lost in this stage
     * @param remade pieces begun again for each good one that leaves: r ÷ (1 − r)
     */
    public record Reached(Stage stage, Money soFar, Money good, Money lost, BigDecimal remade) {}

    private StageByStage() {}

    public static List<Reached> costOfGood(List<Spent> stages) {
        List<Reached> reached = new ArrayList<>();
        Money before = null;
        for (Spent spent : stages) {
            Money soFar = before == null ? spent.amount() : before.plus(spent.amount());
            BigDecimal yield = BigDecimal.ONE.subtract(spent.rejects().fraction());
            Money good = spent.rejects().fraction().signum() == 0 ? soFar : soFar.dividedBy(yield);
            BigDecimal remade = spent.rejects().fraction().divide(yield, Money.PRECISE);
            reached.add(new Reached(spent.stage(), soFar, good, good.minus(soFar), remade));
            before = good;
        }
        return reached;
    }
}
