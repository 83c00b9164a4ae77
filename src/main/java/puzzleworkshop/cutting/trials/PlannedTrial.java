package puzzleworkshop.cutting.trials;

import java.util.Optional;
import puzzleworkshop.cutting.jobs.CutJob.Signature;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.measure.OrderId;

/**
 * A trial that is to be made before an order is cut, because the settings for its board are not proven.
 *
 * @param setting to be proven, with its state today
 * @param order which needs it
 * @param label the order's number, for people
 * @param planned who confirmed the order, and when
 * @param next what to try first, and why; none when the setting is proven after all
 */
public record PlannedTrial(
        long id, CutSetting setting, OrderId order, String label, Signature planned, Optional<NextTry> next) {}
