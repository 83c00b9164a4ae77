/** What Set-up asks about parcels: ways of sending, boxes, labels. */
package puzzleworkshop.delivery.ui.setup;
