/** The screens of settings and their trials: the matrix, one setting, test cards, findings. */
package puzzleworkshop.cutting.ui.settings;
