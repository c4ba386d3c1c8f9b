export { clubPageHtml } from './clubPageHtml.ts';
