/** Ways of sending: what they take, what they cost, and the cheapest that keeps a promise. */
@org.springframework.modulith.NamedInterface("sending")
package puzzleworkshop.delivery.sending;
