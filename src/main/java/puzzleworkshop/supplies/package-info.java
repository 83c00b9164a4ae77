/**
 * What the workshop uses up: sticker paper, laminate, tape, boxes, lenses. A ledger of movements, what a unit cost on
 * average, when to buy again, and which film must never meet the laser.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Supplies")
package puzzleworkshop.supplies;
