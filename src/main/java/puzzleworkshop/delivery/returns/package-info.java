/** What comes back: complaints, what is done about them, what they cost and have in common. */
@org.springframework.modulith.NamedInterface("returns")
package puzzleworkshop.delivery.returns;
