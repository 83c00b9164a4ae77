/**
 * Which board an order has: which it holds, shares, follows on, cuts, gives back, waits for. The only room that holds, cuts or
 * frees a sheet for an order; {@link puzzleworkshop.boards.OrderBoards} and {@link puzzleworkshop.boards.BoardCuts} have its
 * commands and their order of locking.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Boards of orders")
package puzzleworkshop.boards;
