/** Writing a letter from an order's page, the wording of each kind, and what This week must know of the outbox. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.letters.ui;
