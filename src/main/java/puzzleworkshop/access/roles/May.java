package puzzleworkshop.access.roles;

/** What a maker gets of a service command; an owner gets all of it. */
enum May {
    /** The whole of it. There is no money in it. */
    ALL,
    /** It is done, and the answer comes without money. */
    WITHOUT_MONEY,
    /** A refusal: it is money or set-up, which is for an owner. */
    OWNER
}
