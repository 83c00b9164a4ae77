/**
 * The customer's page itself, and the panel on an order's page that hands out its link.
 */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.proofs.ui;
