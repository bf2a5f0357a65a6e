/** The style sheets of the pane, in the order in which one may overrule another. */
import './colors.css';
import './text.css';
import './controls.css';
import './frame.css';
import './arch.css';
import './entries.css';
import './findings.css';
import './steps.css';
import './pdf.css';
import './tools.css';
import './drawing.css';
