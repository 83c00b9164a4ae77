package puzzleworkshop.wood;

/**
 * A kind of board that blanks are asked for on.
 *
 * @param learned of all its blanks together; its size means nothing
 */
public record KindAsked(BoardKindAsked kind, Demand.Learned learned) {}
