/** The bundler turns these imports into stylesheets beside the script. */
declare module "*.css";
