package puzzleworkshop.cutting.trials;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutting.jobs.CutJob.Signature;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.NextTry;
import puzzleworkshop.measure.OrderId;

/**
 * A trial that is to be made before orders are cut, because the settings for their board are not proven. One serves all
 * orders on the same setting.
 *
 * @param setting to be proven, with its state today
 * @param orders which need it, the oldest first
 * @param labels the orders' numbers, for people
 * @param planned who confirmed the order, and when
 * @param next what to try first, and why; none when the setting is proven after all
 */
public record PlannedTrial(
        long id,
        CutSetting setting,
        List<OrderId> orders,
        List<String> labels,
        Signature planned,
        Optional<NextTry> next) {

    public PlannedTrial {
        orders = List.copyOf(orders);
        labels = List.copyOf(labels);
    }
}
