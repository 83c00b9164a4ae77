/** The screen of figures, and on an order's page what it earned against what was reckoned. */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.insights.ui;
