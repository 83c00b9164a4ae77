/** The job ticket: the paper that goes through the stages with an order. */
@org.springframework.modulith.NamedInterface("ticket")
package puzzleworkshop.papers.ticket;
