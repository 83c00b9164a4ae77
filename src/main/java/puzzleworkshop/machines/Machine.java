package puzzleworkshop.machines;

import java.util.Currency;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;

/**
 * A laser cutter of the workshop.
 *
 * @param id given by the store; 0 before the first save
 * @param name what the workshop calls it, unique
 * @param bed what it reaches
 * @param beam power, wavelength, gap, kerf
 * @param motion speeds and acceleration
 * @param bowLimit how much a board may bow over the blank, held down; over it the head may touch it (default 1 mm)
 * @param setUp hands and laser before the first cut: placing, focusing, tracing the frame
 * @param passPause waiting between two passes, for smoke to clear and the wood to cool
 * @param costs what its hour is made of
 * @param control how it counts X and Y and what it takes its orders in
 * @param standard the one that new orders are planned on; exactly one is
 * @param retired no longer used; its trials stay
 */
public record Machine(
        long id,
        String name,
        Size bed,
        Beam beam,
        Motion motion,
        Length bowLimit,
        Minutes setUp,
        Minutes passPause,
        MachineCosts costs,
        MachineControl control,
        boolean standard,
        boolean retired) {

    public static final Length DEFAULT_BOW_LIMIT = Length.mm(1);

    public Machine {
        if (name == null || name.isBlank()) {
            throw new IllegalArgumentException("A machine needs a name");
        }
        if (bowLimit.mm() < 0) {
            throw new IllegalArgumentException("The bow limit is not negative");
        }
        if (standard && retired) {
            throw new IllegalArgumentException("A retired machine cannot be the standard one");
        }
        name = name.strip();
    }

    /** A machine that nobody was asked about how it is spoken to. */
    public Machine(
            long id,
            String name,
            Size bed,
            Beam beam,
            Motion motion,
            Length bowLimit,
            Minutes setUp,
            Minutes passPause,
            MachineCosts costs,
            boolean standard,
            boolean retired) {
        this(id, name, bed, beam, motion, bowLimit, setUp, passPause, costs, MachineControl.USUAL, standard, retired);
    }

    /** A 20 W diode cutter as commonly sold (common practice), to start from: change what differs. */
    public static Machine usual(String name, Currency currency) {
        return new Machine(
                0,
                name,
                Size.mm(400, 400),
                new Beam(20, 450, Length.mm(3), Length.mm(0.15)),
                new Motion(Speed.mmPerSecond(100), Speed.mmPerSecond(50), 500, Length.mm(0.02)),
                DEFAULT_BOW_LIMIT,
                Minutes.of(6),
                Minutes.ofSeconds(10),
                MachineCosts.unknown(currency),
                false,
                false);
    }

    /** Whether a blank of this size lies on the bed, as it is or turned by 90°. */
    public boolean reaches(Size blank) {
        return blank.fitsUpright(bed);
    }

    Machine withId(long newId) {
        return new Machine(
                newId, name, bed, beam, motion, bowLimit, setUp, passPause, costs, control, standard, retired);
    }

    public Machine withControl(MachineControl other) {
        return new Machine(id, name, bed, beam, motion, bowLimit, setUp, passPause, costs, other, standard, retired);
    }
}
