package puzzleworkshop.wood.asked;

/** A blank that was asked for, with its kind of board. */
public record AskedBlank(Demand.Blank blank, BoardKindAsked kind) {}
